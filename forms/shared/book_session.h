// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QTimer>
#include <functional>
#include <memory>

#include "forms/shared/session.h"
#include "model/book/book.h"
#include "model/logging/log_record.h"
#include "model/record/season.h"

namespace spoilbook::form {

/// The session over a real book, and the only one in forms/ that writes. Desks ask it for the season, hand it
/// what was typed, and listen to `changed`.
class BookSession : public Session {
    Q_OBJECT

 public:
    /// `clock` gives the present time; `why_not` says why the book is open for reading only, empty: it is
    /// not. `season`, where it was read already on another thread: the book's, and nothing wrote since.
    BookSession(Book book, std::function<Instant()> clock, QString why_not,
                std::unique_ptr<Season> season = nullptr);

    [[nodiscard]] const Book& book() const { return book_; }
    /// All that the book holds, read again after each change. The first call throws where the book cannot be
    /// read; a later change that cannot be read again goes to `trouble`, and the season before it stays.
    [[nodiscard]] const Season& season() const;
    /// The instant for every calculation: as-at, or now.
    [[nodiscard]] Instant figures_at() const;
    /// Grows with every write, undo and redo that is more than bucket presses: what was worked out at another
    /// number may be stale.
    [[nodiscard]] int writes_that_count() const { return writes_that_count_; }

    /// Writes what one field or press holds, by label (model/logging/log_record.h), under the person's name.
    /// `what` is said in the foot and by undo. Refusals go back to the field; a broken file goes to
    /// `trouble`.
    Refusals log(const QString& what, const Kind& kind, const std::string& label,
                 const std::vector<FieldInput>& inputs, const QString& why = {});
    /// Any other write, as one entry of the journal. Where it changes nothing, nothing is said either.
    Refusals write(const QString& what, EntryKind kind, const QString& why,
                   const std::function<Checked<Done>(Book&, const Act&)>& body);

    [[nodiscard]] QString path() const override;
    [[nodiscard]] QString harbour() const override;
    [[nodiscard]] QString works() const override;
    [[nodiscard]] Zone zone() const override;
    [[nodiscard]] Instant now() const override { return clock_(); }
    [[nodiscard]] bool writable() const override { return why_not_.isEmpty(); }
    [[nodiscard]] QString why_not_writable() const override { return why_not_; }
    [[nodiscard]] std::optional<Instant> as_at() const override { return as_at_; }
    void set_as_at(std::optional<Instant> at) override;
    [[nodiscard]] QList<Writer> people() const override;
    [[nodiscard]] QString person() const override { return person_; }
    QString set_person(const QString& name) override;
    [[nodiscard]] QString undo_text() const override;
    [[nodiscard]] QString redo_text() const override;
    QString undo() override;
    QString redo() override;
    [[nodiscard]] std::optional<Written> last_written() const override { return written_; }
    [[nodiscard]] std::function<QString(const GoingOn&)> back_up(const QString& to) const override;

 private:
    [[nodiscard]] Act act(EntryKind kind, const QString& why) const;
    [[nodiscard]] QString next_words(std::optional<Entry> (*next)(const Book&, const std::string&)) const;
    void note(const QString& what);

    Book book_;
    std::function<Instant()> clock_;
    QString why_not_;
    QString person_;
    std::optional<Instant> as_at_;
    std::optional<Written> written_;
    int writes_that_count_ = 0;
    QTimer minute_;
    mutable std::unique_ptr<Season> season_;
};

/// All reasons in one text for a person.
QString refusals_shown(const Refusals& refusals);

}  // namespace spoilbook::form
