// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QByteArray>
#include <QStringList>

#include "forms/shared/palette.h"
#include "forms/shared/receiver_settings.h"

class QSettings;

namespace spoilbook::form {

/// What the program remembers of its windows, in one place with its defaults. A value that makes no sense
/// reads as the default. The book holds none of this.
class Memory {
 public:
    /// `settings` must live longer. The program's lie in the XDG configuration folder.
    explicit Memory(QSettings& settings) : settings_(settings) {}

    [[nodiscard]] Light light() const;
    void set_light(Light light);

    /// Newest first, at most ten; books that are gone stay listed until they are forgotten.
    [[nodiscard]] QStringList recent_books() const;
    void add_recent_book(const QString& path);
    void forget_book(const QString& path);

    [[nodiscard]] QByteArray window() const;
    void set_window(const QByteArray& geometry);

    /// The desk and leaf that were last open in a book.
    [[nodiscard]] QString place(const QString& book) const;
    void set_place(const QString& book, const QString& desk_and_leaf);

    /// Who wrote in a book last; empty: nobody yet.
    [[nodiscard]] QString person(const QString& book) const;
    void set_person(const QString& book, const QString& name);

    /// The folder into which a book's loggers' files are put; empty: none is watched.
    [[nodiscard]] QString logger_folder(const QString& book) const;
    void set_logger_folder(const QString& book, const QString& folder);

    /// Of this machine, whatever the book; off until someone says otherwise.
    [[nodiscard]] ReceiverSettings receiver() const;
    void set_receiver(const ReceiverSettings& receiver);

 private:
    QSettings& settings_;
};

}  // namespace spoilbook::form
