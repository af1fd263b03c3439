// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/duty_rows.h"

#include <QCoreApplication>
#include <algorithm>

#include "forms/shared/number_typed.h"
#include "forms/works/say.h"
#include "model/consent/due_days.h"
#include "model/consent/duty_word.h"
#include "model/consent/quantity_text.h"
#include "model/record/evidence_text.h"
#include "model/unit/calendar.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text, int n = -1) {
    return QCoreApplication::translate("Duties", text, nullptr, n);
}

QString shown(const std::string& text) {
    return QString::fromStdString(text);
}

QDate date_of(Day day) {
    return {day.year, day.month, day.day};
}

QString short_day(Day day, const QLocale& locale) {
    return locale.toString(date_of(day), QStringLiteral("d MMM"));
}

// "6–7 Dec, 20 Dec–11 Jan": days that follow each other as one span.
QString spans_shown(const std::vector<Day>& days, const QLocale& locale) {
    QStringList spans;
    for (std::size_t first = 0; first < days.size();) {
        std::size_t last = first;
        while (last + 1 < days.size() && days[last + 1] == plus_days(days[last], 1))
            ++last;
        spans << (first == last
                      ? short_day(days[first], locale)
                      : tr("%1 to %2").arg(short_day(days[first], locale), short_day(days[last], locale)));
        first = last + 1;
    }
    return spans.join(QStringLiteral(", "));
}

State shape_of(DutyState state, bool late, bool unknown) {
    switch (state) {
        case DutyState::overdue:
            return State::hold;
        case DutyState::due:
            return State::attention;
        case DutyState::done:
            return late ? State::attention : State::clear;
        case DutyState::nil:
            return State::clear;
        case DutyState::coming:
            break;
    }
    return unknown ? State::unknown : State::clear;
}

QString covers_shown(const DutyTime& time, const Zone& zone, const QLocale& locale) {
    if (time.step)
        return tr("at %1 %2").arg(number_shown(*time.step, 0, locale), shown(unit_text(time.duty.counted)));
    if (time.event != nullptr)
        return time.event->what.empty() ? moment_shown(*time.arises, zone, locale) : shown(time.event->what);
    if (!time.covers) return {};
    const Day from = zone.day_of(time.covers->from);
    const Day to = zone.day_of(time.covers->to - 1);
    return tr("%1 to %2").arg(short_day(from, locale), day_shown(to, locale));
}

QString left_shown(const DutyRow& row) {
    if (!row.left || row.state == DutyState::done || row.state == DutyState::nil) return {};
    const int days = int(*row.left);
    if (row.state == DutyState::overdue) return days == 0 ? tr("over today") : tr("%1 days over").arg(-days);
    if (days == 0) return tr("today");
    return days == 1 ? tr("tomorrow") : tr("%1 days").arg(days);
}

void fill_done(DutyRow& row, const DutyTime& time, const Zone& zone, const QLocale& locale) {
    if (time.done == nullptr) return;
    row.done = time.done->id;
    row.done_text = moment_shown(*time.done->done_at, zone, locale);
    if (!time.done->by.empty()) row.done_text = tr("%1, %2").arg(row.done_text, shown(time.done->by));
    row.evidence = shown(time.done->evidence);
}

// Open ones first, by when they are due; then what comes; then what is done, newest first.
int rank(const DutyRow& row) {
    if (row.can_be_done) return 0;
    return row.state == DutyState::coming ? 1 : 2;
}

void put_in_order(std::vector<DutyRow>& rows) {
    std::stable_sort(rows.begin(), rows.end(), [](const DutyRow& a, const DutyRow& b) {
        if (rank(a) != rank(b)) return rank(a) < rank(b);
        const double none = 9e18;  // without a time: behind those that have one
        const double x = a.order.value_or(none);
        const double y = b.order.value_or(none);
        return rank(a) == 2 ? x > y : x < y;
    });
}

void put_due(DutyRow& row, Instant due, const Zone& zone, const QLocale& locale) {
    row.due_text = due_shown(due, zone, locale);
    row.due_copy = shown(instant_text(due, zone));
    row.day = date_of(zone.day_of(due - 1));
    row.order = double(due.utc_ms);
}

DutyRow response_row(const ResponseTime& time, const TurbidityWatch& watch, const Season& season,
                     Instant as_at, const QLocale& locale) {
    const Zone& zone = season.zone;
    const TriggerRecord& record = time.answer.record;
    DutyRow row;
    row.trigger = trigger_row(time.answer, watch.site(record.event.site), as_at);
    row.word = state_word(duty_word(time.state, time.late()));
    row.shape = shape_of(time.state, time.late(), false);
    row.state = time.state;
    row.condition = row.trigger->condition;
    if (record.of->consent != nullptr) row.consent = shown(record.of->consent->consent);
    row.what = tr("answer: %1").arg(action_word(time.response.action));
    row.text = book_text(record.version().condition->text);
    row.covers =
        tr("trigger at %1, %2").arg(row.trigger->site, moment_shown(record.event.start, zone, locale));
    row.how = time.due ? tr("Due by %1.").arg(due_shown(*time.due, zone, locale))
                       : tr("The condition sets no time.");
    if (!time.response.to.empty()) row.how += u' ' + tr("To %1.").arg(book_text(time.response.to));
    if (time.due) put_due(row, *time.due, zone, locale);
    if (time.due) row.left = days_left(*time.due, zone, as_at);
    row.can_be_done = time.state != DutyState::done;
    row.left_text = left_shown(row);
    if (time.answer.told_at) row.done_text = moment_shown(*time.answer.told_at, zone, locale);
    return row;
}

}  // namespace

void add_response_rows(std::vector<DutyRow>& rows, const std::vector<ResponseTime>& times,
                       const TurbidityWatch& watch, const Season& season, Instant as_at,
                       const QLocale& locale) {
    for (const ResponseTime& time : times)
        rows.push_back(response_row(time, watch, season, as_at, locale));
    put_in_order(rows);
}

QString how_due(const DutyTime& time, const Zone& zone, const QLocale& locale) {
    if (time.to_go)
        return tr("Arises when %1 %2 more are counted.")
            .arg(number_shown(*time.to_go, 0, locale), shown(unit_text(time.duty.counted)));
    if (!time.due) return tr("The condition sets no time.");
    const auto days = due_days(time, zone);
    if (!days) return tr("Due by %1.").arg(due_shown(*time.due, zone, locale));
    QString said = tr("%1 working days after %2: %3.")
                       .arg(days->n)
                       .arg(day_shown(days->after, locale), due_shown(*time.due, zone, locale));
    if (!days->not_working.empty())
        said += u' ' + tr("Not working: %1.").arg(spans_shown(days->not_working, locale));
    if (days->listed_to)
        said += u' ' + tr("Holidays are listed to %1 only: one after that would make it due later.")
                           .arg(*days->listed_to);
    return said;
}

std::vector<DutyRow> duty_rows(const std::vector<DutyTime>& times, const Zone& zone, Instant as_at,
                               const QLocale& locale) {
    std::vector<DutyRow> rows;
    for (const DutyTime& time : times) {
        DutyRow row;
        row.word = state_word(duty_word(time));
        row.shape = shape_of(time.state, time.late(), time.unknown > 0);
        row.state = time.state;
        row.condition = shown(time.condition->condition);
        if (time.consent != nullptr) row.consent = shown(time.consent->consent);
        row.what = shown(time.duty.what);
        row.text = book_text(time.condition->text);
        row.covers = covers_shown(time, zone, locale);
        row.how = how_due(time, zone, locale);
        if (time.due) put_due(row, *time.due, zone, locale);
        if (const auto left = days_left(time, zone, as_at)) row.left = *left;
        if (time.covers && time.state != DutyState::coming) row.covers_from = time.covers->from;
        row.can_be_done = time.state == DutyState::due || time.state == DutyState::overdue;
        row.left_text = left_shown(row);
        fill_done(row, time, zone, locale);
        rows.push_back(std::move(row));
    }
    put_in_order(rows);
    return rows;
}

std::vector<Column<DutyRow>> duty_columns() {
    using Row = DutyRow;
    return {
        Column<Row>(tr("State"), {}, [](const Row& r) { return r.word; }).mark([](const Row& r) {
            return std::optional(r.shape);
        }),
        Column<Row>(tr("What"), {}, [](const Row& r) { return r.what; }),
        Column<Row>(tr("Condition"), {}, [](const Row& r) { return r.condition; }),
        Column<Row>(tr("Of"), {}, [](const Row& r) { return r.covers; }),
        Column<Row>(tr("Due by"), {}, [](const Row& r) { return r.due_text; }).copied_as([](const Row& r) {
            return r.due_copy;
        }),
        Column<Row>(tr("Left"), {}, [](const Row& r) { return r.left_text; })
            .number([](const Row& r) { return r.left_text.isEmpty() ? std::nullopt : r.left; })
            .tip(tr("Local days until the last day in time")),
        Column<Row>(tr("Done"), {}, [](const Row& r) { return r.done_text; }),
        Column<Row>(tr("Evidence"), {},
                    [](const Row& r) { return shown(evidence_words(r.evidence.toStdString())); })
            .copied_as([](const Row& r) { return r.evidence; }),
    };
}

namespace {

/// Of those that are not done and not overdue the one with the earliest due time; end where none has one.
std::vector<DutyRow>::const_iterator next_due(const std::vector<DutyRow>& rows) {
    auto next = rows.end();
    for (auto row = rows.begin(); row != rows.end(); ++row) {
        const bool open = row->state == DutyState::due || row->state == DutyState::coming;
        if (!open || !row->order || row->due_text.isEmpty()) continue;
        if (next == rows.end() || *row->order < *next->order) next = row;
    }
    return next;
}

}  // namespace

QString duties_sentence(const std::vector<DutyRow>& rows) {
    if (rows.empty()) return tr("No condition of this book asks for anything by a day.");
    const auto count = [&](DutyState state) {
        return int(
            std::count_if(rows.begin(), rows.end(), [&](const DutyRow& r) { return r.state == state; }));
    };
    QStringList parts;
    if (const int n = count(DutyState::overdue)) parts << tr("%1 overdue").arg(n);
    if (const int n = count(DutyState::due)) parts << tr("%1 due").arg(n);
    if (const int n = count(DutyState::coming)) parts << tr("%1 coming").arg(n);
    const auto next = next_due(rows);
    const QString said = parts.isEmpty() ? tr("Nothing is open.") : parts.join(QStringLiteral(", ")) + u'.';
    if (next == rows.end()) return said;
    return said + u' ' +
           tr("Next: %1 of condition %2 by %3.").arg(next->what, next->condition, next->due_text);
}

}  // namespace spoilbook::form
