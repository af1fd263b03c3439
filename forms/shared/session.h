// SPDX-License-Identifier: GPL-3.0-or-later
// The open book as the window sees it. The desks see more: whoever makes them hands them the book itself.
#pragma once

#include <QObject>
#include <QString>
#include <QStringList>
#include <functional>
#include <optional>

#include "model/unit/going_on.h"
#include "model/unit/instant.h"
#include "model/unit/zone.h"

namespace spoilbook::form {

/// One who may write into the book.
struct Writer {
    QString name;
    QString role;  ///< "skipper", in the reader's language
};

/// The last thing that was written down.
struct Written {
    QString what;  ///< "load L-0597 closed by ullage"
    Instant at;
};

/// One object announces changes, all screens listen: `changed` comes after every write, undo and redo, and
/// after the as-at or the person changed. Reading is cheap; a write waits for the disk, and a backup copies
/// the whole book.
class Session : public QObject {
    Q_OBJECT

 public:
    using QObject::QObject;

    [[nodiscard]] virtual QString path() const = 0;
    [[nodiscard]] virtual QString harbour() const = 0;
    [[nodiscard]] virtual QString works() const = 0;
    [[nodiscard]] virtual Zone zone() const = 0;
    /// The present time, from the program's clock.
    [[nodiscard]] virtual Instant now() const = 0;
    /// False: another has the book open for writing, or it may only be read. `why_not` says which.
    [[nodiscard]] virtual bool writable() const = 0;
    [[nodiscard]] virtual QString why_not_writable() const = 0;

    /// The instant that figures are true for; nothing: now, as it goes on.
    [[nodiscard]] virtual std::optional<Instant> as_at() const = 0;
    virtual void set_as_at(std::optional<Instant> at) = 0;

    [[nodiscard]] virtual QList<Writer> people() const = 0;
    [[nodiscard]] virtual QString person() const = 0;
    /// Empty: done; otherwise why not. A name that is not in the list logs as a relief.
    virtual QString set_person(const QString& name) = 0;

    /// What undo would take back, and redo bring again; empty: nothing.
    [[nodiscard]] virtual QString undo_text() const = 0;
    [[nodiscard]] virtual QString redo_text() const = 0;
    /// Empty: done; otherwise why not, naming the entry that stands on it.
    virtual QString undo() = 0;
    virtual QString redo() = 0;

    [[nodiscard]] virtual std::optional<Written> last_written() const = 0;
    /// Copies the book and verifies the copy. What is answered does it, on any thread, also while the book is
    /// written; empty: done; otherwise why not.
    [[nodiscard]] virtual std::function<QString(const GoingOn&)> back_up(const QString& to) const = 0;

 signals:
    void changed();
    /// The clock went on: what is true for now is a minute older.
    void minute_passed();
    /// Something that was asked for did not happen; for the strip above the sheet.
    void trouble(const QString& what);
    /// What a person should know of their last press; for the same strip, until the next change.
    void notice(const QString& what);
};

}  // namespace spoilbook::form
