// SPDX-License-Identifier: GPL-3.0-or-later
// How a desk is plugged into the window: a name, and its leaves, each made when it is first turned to.
#pragma once

#include <QString>
#include <functional>
#include <memory>
#include <vector>

#include "forms/shared/session.h"
#include "model/unit/going_on.h"

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

/// What is left to do on the screen's thread once a book has been read on another: making its session and
/// desks. Called once.
using Ready = std::function<OpenedBook()>;

/// What app/desktop does for the window: the only part that knows files. All that answers Ready is slow, runs
/// on any thread, one at a time, and tells `going_on` how far it is.
class Library {
 public:
    virtual ~Library() = default;
    virtual Ready open(const QString& path, const GoingOn& going_on) = 0;
    /// Makes a book from a folder of plain files and opens it.
    virtual Ready create_from_folder(const QString& folder, const QString& path, const GoingOn& going_on) = 0;
    /// Copies a backup to `path`, checks the copy and opens it. The backup stays as it is.
    virtual Ready take_back(const QString& backup, const QString& path, const GoingOn& going_on) = 0;
    /// Whether this installation brought the sample book.
    [[nodiscard]] virtual bool has_sample() const = 0;
    /// Opens this person's own copy of it, made when there is none yet.
    virtual Ready open_sample(const GoingOn& going_on) = 0;
};

}  // namespace spoilbook::form
