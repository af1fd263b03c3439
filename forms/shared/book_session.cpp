// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/book_session.h"

#include "forms/shared/entry_words.h"
#include "model/book/backup.h"
#include "model/book/season.h"
#include "model/book/undo.h"

namespace spoilbook::form {
namespace {

QString shown(const std::string& text) {
    return QString::fromStdString(text);
}

}  // namespace

QString refusals_shown(const Refusals& refusals) {
    QStringList lines;
    for (const Refusal& refusal : refusals)
        lines << shown(one_line(refusal));
    return lines.join(u'\n');
}

BookSession::BookSession(Book book, std::function<Instant()> clock, QString why_not,
                         std::unique_ptr<Season> season)
    : book_(std::move(book)),
      clock_(std::move(clock)),
      why_not_(std::move(why_not)),
      season_(std::move(season)) {
    connect(&minute_, &QTimer::timeout, this, &Session::minute_passed);
    minute_.start(int(ms_per_minute));
}

const Season& BookSession::season() const {
    if (!season_) season_ = std::make_unique<Season>(read_season(book_));
    return *season_;
}

Instant BookSession::figures_at() const {
    return as_at_.value_or(clock_());
}

Act BookSession::act(EntryKind kind, const QString& why) const {
    return {kind, clock_(), person_.toStdString(), why.toStdString()};
}

void BookSession::note(const QString& what) {
    written_ = Written{what, clock_()};
    try {
        season_ = std::make_unique<Season>(read_season(book_));
    } catch (const std::exception& error) {
        // What listens to `changed` asks for the season: it must find one.
        emit trouble(
            tr("%1 was written, but the book cannot be read any more: %2").arg(what, shown(error.what())));
    }
    emit changed();
}

Refusals BookSession::log(const QString& what, const Kind& kind, const std::string& label,
                          const std::vector<FieldInput>& inputs, const QString& why) {
    return write(what, EntryKind::change, why, [&](Book& book, const Act& by) -> Checked<Done> {
        const auto outcome = log_record(book, by, kind, label, inputs);
        if (!outcome) return outcome.refusals();
        return Done{};
    });
}

Refusals BookSession::write(const QString& what, EntryKind kind, const QString& why,
                            const std::function<Checked<Done>(Book&, const Act&)>& body) {
    try {
        const JournalState before = journal_state(book_);
        const auto done = body(book_, act(kind, why));
        if (!done) return done.refusals();
        const JournalState after = journal_state(book_);
        if (before.entries == after.entries) return {};
        if (more_than_buckets(book_, before, after)) ++writes_that_count_;
    } catch (const std::exception& error) {
        // All or nothing: the book is as it was. What the disk said goes to the person as it is.
        const QString problem =
            tr("%1 was not written, and the book is as it was: %2").arg(what, shown(error.what()));
        emit trouble(problem);
        return {{"not-written", "", problem.toStdString(), {}}};
    }
    note(what);
    return {};
}

QString BookSession::path() const {
    return shown(book_.path());
}

QString BookSession::harbour() const {
    return shown(season().harbour.name);
}

QString BookSession::works() const {
    return shown(season().harbour.works);
}

Zone BookSession::zone() const {
    return season().zone;
}

void BookSession::set_as_at(std::optional<Instant> at) {
    as_at_ = at;
    emit changed();
}

QList<Writer> BookSession::people() const {
    QList<Writer> people;
    for (const spoilbook::Person& person : season().people.rows()) {
        people.append({shown(person.name), shown(person.role).replace(u'_', u' ')});
    }
    return people;
}

QString BookSession::set_person(const QString& name) {
    person_ = name.simplified();
    emit changed();
    return {};
}

QString BookSession::next_words(std::optional<Entry> (*next)(const Book&, const std::string&)) const {
    if (!writable()) return {};
    try {
        const auto entry = next(book_, person_.toStdString());
        return entry ? entry_words(book_, *entry, zone()) : QString();
    } catch (const std::exception& error) {
        // Said where the press stands; the press itself is refused with the same reason.
        return tr("an entry that cannot be read: %1").arg(shown(error.what()));
    }
}

QString BookSession::undo_text() const {
    return next_words(next_undo);
}

QString BookSession::redo_text() const {
    return next_words(next_redo);
}

QString BookSession::undo() {
    const QString what = undo_text();
    return refusals_shown(write(tr("%1: taken back").arg(what), EntryKind::undo, {},
                                [](Book& book, const Act& by) -> Checked<Done> {
                                    const auto entry = spoilbook::undo(book, by);
                                    if (!entry) return entry.refusals();
                                    return Done{};
                                }));
}

QString BookSession::redo() {
    const QString what = redo_text();
    return refusals_shown(write(tr("%1: brought again").arg(what), EntryKind::redo, {},
                                [](Book& book, const Act& by) -> Checked<Done> {
                                    const auto entry = spoilbook::redo(book, by);
                                    if (!entry) return entry.refusals();
                                    return Done{};
                                }));
}

std::function<QString(const GoingOn&)> BookSession::back_up(const QString& to) const {
    // A reader of its own: the session's book is the screen's thread's.
    return [from = book_.path(), to](const GoingOn& going_on) {
        try {
            const auto book = Book::open_to_read(from);
            if (!book) return refusals_shown(book.refusals());
            return refusals_shown(spoilbook::back_up(*book, to.toStdString(), going_on).refusals());
        } catch (const std::exception& error) {
            return tr("The backup was not made: %1").arg(shown(error.what()));
        }
    };
}

}  // namespace spoilbook::form
