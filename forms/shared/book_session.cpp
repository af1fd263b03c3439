// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/book_session.h"

#include "forms/shared/time_typed.h"
#include "model/book/backup.h"
#include "model/book/changeset.h"
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

BookSession::BookSession(Book book, std::function<Instant()> clock, QString why_not)
    : book_(std::move(book)), clock_(std::move(clock)), why_not_(std::move(why_not)) {}

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
    season_.reset();
    written_ = Written{what, clock_()};
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
        const auto done = body(book_, act(kind, why));
        if (!done) return done.refusals();
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

QString BookSession::set_person(const QString& name, const QString&) {
    person_ = name.simplified();
    emit changed();
    return {};
}

QString BookSession::entry_words(const Entry& entry) const {
    QString first;
    int more = 0;
    for_each_touch_id(entry.changeset, [&](const char* table, const Id& id) {
        const Kind* kind = find_kind(table);
        if (!kind) return true;
        if (first.isEmpty()) {
            first = shown(kind->name + " " + book_.label_of(*kind, id)).replace(u'_', u' ');
        } else {
            ++more;
        }
        return more < 100;
    });
    if (more > 0) first = tr("%1 and more, %2 records").arg(first).arg(more + 1);
    return tr("%1, written %2").arg(first, time_shown(entry.at, zone()));
}

QString BookSession::undo_text() const {
    if (!writable()) return {};
    const auto entry = next_undo(book_, person_.toStdString());
    return entry ? entry_words(*entry) : QString();
}

QString BookSession::redo_text() const {
    if (!writable()) return {};
    const auto entry = next_redo(book_, person_.toStdString());
    return entry ? entry_words(*entry) : QString();
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

QString BookSession::back_up(const QString& to) {
    try {
        return refusals_shown(spoilbook::back_up(book_, to.toStdString()).refusals());
    } catch (const std::exception& error) {
        return tr("The backup was not made: %1").arg(shown(error.what()));
    }
}

}  // namespace spoilbook::form
