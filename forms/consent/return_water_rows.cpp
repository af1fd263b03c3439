// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/return_water_rows.h"

#include <QCoreApplication>

#include "forms/shared/number_typed.h"
#include "forms/works/say.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Return", text);
}

QString read(const std::string& text) {
    return QString::fromStdString(text);
}

State answer_mark(AnswerState state) {
    switch (state) {
        case AnswerState::answered:
            return State::clear;
        case AnswerState::undated:
            return State::unknown;
        case AnswerState::waiting:
            return State::attention;
        case AnswerState::late:
        case AnswerState::unanswered:
            break;
    }
    return State::hold;
}

template <class Row>
Column<Row> words(const QString& title, QString Row::*text) {
    return Column<Row>(title, {}, [text](const Row& r) { return r.*text; });
}

template <class Row>
Column<Row> tenths(const QString& title, const QString& unit, std::optional<double> Row::*number,
                   const QLocale& locale) {
    return Column<Row>(title, unit,
                       [=](const Row& r) {
                           const auto& value = r.*number;
                           return value ? number_shown(*value, 1, locale) : QStringLiteral("–");
                       })
        .number([number](const Row& r) { return r.*number; });
}

Column<WaterRow> whole(const QString& title, double WaterRow::*number, const QLocale& locale) {
    return Column<WaterRow>(title, {}, [=](const WaterRow& r) { return number_shown(r.*number, 0, locale); })
        .number([number](const WaterRow& r) { return std::optional(r.*number); });
}

}  // namespace

std::vector<WaterRow> water_rows(const ReturnFacts& facts, const QLocale& locale) {
    std::vector<WaterRow> rows;
    for (const SiteMonth& month : facts.water) {
        WaterRow row;
        row.site = read(month.site);
        row.role = read(month.role);
        row.unit = read(month.unit);
        row.readings = double(month.readings);
        row.counted = double(month.counted);
        row.expired = double(month.expired);
        if (const auto complete = month.complete()) row.complete_percent = *complete * 100;
        row.median = month.median;
        row.p95 = month.p95;
        row.greatest = month.greatest;
        std::size_t overruled = 0;
        for (const auto& one : month.overruled)
            overruled += one.readings;
        if (overruled > 0) row.overruled = tr("%1 readings").arg(locale.toString(qulonglong(overruled)));
        rows.push_back(std::move(row));
    }
    return rows;
}

std::vector<AnsweredRow> answered_rows(const ReturnFacts& facts, const QLocale& locale) {
    std::vector<AnsweredRow> rows;
    const Zone& zone = facts.season->zone;
    for (const EventAnswer& answer : facts.triggers) {
        const TriggerEvent& event = answer.record.event;
        AnsweredRow row;
        row.condition = read(answer.record.of->number);
        row.site = read(event.site);
        row.passed = moment_shown(event.start, zone, locale);
        row.clear = event.end ? moment_shown(*event.end, zone, locale) : tr("open");
        if (answer.record.due) row.due = due_shown(*answer.record.due, zone, locale);
        row.answer = state_word(answer_word(answer.state));
        row.answer_state = answer_mark(answer.state);
        row.peak = event.peak;
        if (answer.row != nullptr) {
            row.cause = read(answer.row->cause);
            row.done = read(answer.row->action);
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

std::vector<Column<WaterRow>> water_columns(const QLocale& locale) {
    using Row = WaterRow;
    return {words<Row>(tr("Site"), &Row::site),
            words<Row>(tr("Role"), &Row::role),
            words<Row>(tr("Unit"), &Row::unit),
            whole(tr("Readings"), &Row::readings, locale),
            whole(tr("Counted"), &Row::counted, locale),
            tenths<Row>(tr("Complete"), QStringLiteral("%"), &Row::complete_percent, locale),
            tenths<Row>(tr("Median"), {}, &Row::median, locale),
            tenths<Row>(tr("95th percentile"), {}, &Row::p95, locale),
            tenths<Row>(tr("Greatest"), {}, &Row::greatest, locale),
            whole(tr("Calibration expired"), &Row::expired, locale),
            words<Row>(tr("Overruled"), &Row::overruled)};
}

std::vector<Column<AnsweredRow>> answered_columns(const QLocale& locale) {
    using Row = AnsweredRow;
    return {words<Row>(tr("Condition"), &Row::condition),
            words<Row>(tr("Site"), &Row::site),
            words<Row>(tr("Passed"), &Row::passed),
            words<Row>(tr("All clear"), &Row::clear),
            tenths<Row>(tr("Peak"), {}, &Row::peak, locale),
            words<Row>(tr("Answer due"), &Row::due),
            words<Row>(tr("Answer"), &Row::answer).mark([](const Row& r) {
                return std::optional(r.answer_state);
            }),
            words<Row>(tr("Cause"), &Row::cause),
            words<Row>(tr("Done"), &Row::done)};
}

}  // namespace spoilbook::form
