// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QByteArray>
#include <QString>
#include <functional>

class QWidget;

namespace spoilbook::form {

/// Asks where to save, without stopping the program; `write` runs when the person has chosen.
void save_file(QWidget* parent, const QString& title, const QString& name, const QString& kinds,
               std::function<void(const QString& path)> write);

/// Asks for a file that is there, or for a folder, in the same way.
void choose_file(QWidget* parent, const QString& title, const QString& kinds,
                 std::function<void(const QString& path)> take);
void choose_folder(QWidget* parent, const QString& title, std::function<void(const QString& path)> take);

/// Where a folder of its own goes that the person chose a place for: `chosen` itself where it is empty or not
/// there yet, else a new folder of this name in it.
QString folder_of_its_own(const QString& chosen, const QString& name);

/// Writes all or nothing. Empty: written; otherwise why not, for a person.
QString write_file(const QString& path, const QByteArray& bytes);

}  // namespace spoilbook::form
