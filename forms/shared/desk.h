// SPDX-License-Identifier: GPL-3.0-or-later
// How a desk is plugged into the window: a name, and its leaves, each made when it is first turned to.
#pragma once

#include <QString>
#include <functional>
#include <memory>
#include <vector>

#include "forms/shared/session.h"

class QWidget;

namespace spoilbook::form {

/// One leaf of a desk. `make` is called once, when it is first shown; the parent owns what it returns. A leaf
/// listens to Session::changed itself.
struct Leaf {
    QString key;    ///< stable, for what the program remembers
    QString title;  ///< "Running shift"
    QString icon;   ///< a name of forms/shared/icons
    std::function<QWidget*(QWidget* parent)> make;
};

struct Desk {
    QString key;     ///< "barge"
    QString title;   ///< "Barge desk"
    QString reader;  ///< whose it is: "skipper, tug master"
    QString icon;
    std::vector<Leaf> leaves;
};

/// A book that was opened, or why not.
struct OpenedBook {
    std::unique_ptr<Session> session;
    std::vector<Desk> desks;
    QString problem;  ///< empty where there is a session
};

/// What app/desktop does for the window: the only part that knows files.
class Library {
 public:
    virtual ~Library() = default;
    virtual OpenedBook open(const QString& path) = 0;
    /// Makes a book from a folder of plain files and opens it.
    virtual OpenedBook create_from_folder(const QString& folder, const QString& path) = 0;
    /// Whether this installation brought the sample book.
    [[nodiscard]] virtual bool has_sample() const = 0;
    /// Opens this person's own copy of it, made when there is none yet.
    virtual OpenedBook open_sample() = 0;
};

}  // namespace spoilbook::form
