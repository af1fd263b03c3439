// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/turbidity_rows.h"

#include <QCoreApplication>
#include <algorithm>

#include "forms/consent/turbidity_paint.h"
#include "forms/shared/number_typed.h"
#include "forms/works/say.h"
#include "model/answer/board_state.h"
#include "model/unit/calendar.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("TurbidityLeaf", text);
}

void say_state(TriggerRow& row, Instant as_at) {
    const bool answered = row.answered;
    if (!answered && row.due)
        row.clock = as_at <= *row.due ? tr("%1 left").arg(span_shown(*row.due - as_at))
                                      : tr("overdue by %1").arg(span_shown(as_at - *row.due));
    const bool overdue = !answered && row.due && as_at > *row.due;
    const bool whole = answered && row.lacking.isEmpty() && !row.late;
    row.state = overdue ? State::hold : whole && row.end ? State::clear : State::attention;
    const QString answer = !answered                ? tr("not answered")
                           : !row.lacking.isEmpty() ? tr("answer not whole")
                           : row.late               ? tr("answered late")
                                                    : tr("answered");
    row.word = (row.end ? tr("over, %1") : tr("open, %1")).arg(answer);
}

}  // namespace

QString action_word(const std::string& action) {
    if (action == "tell") return tr("tell");
    if (action == "check") return tr("check");
    if (action == "slow") return tr("slow the work");
    if (action == "move") return tr("move");
    if (action == "change_cell") return tr("change the cell");
    if (action == "stop") return tr("stop");
    return QString::fromStdString(action);
}

QString span_shown(std::int64_t ms) {
    const std::int64_t minutes = ms / ms_per_minute;
    if (minutes >= 48 * 60) return tr("%1 d %2 h").arg(minutes / 1440).arg(minutes % 1440 / 60);
    if (minutes >= 60) return tr("%1 h %2 min").arg(minutes / 60).arg(minutes % 60);
    return tr("%1 min").arg(minutes);
}

QString flag_word(Flag flag) {
    switch (flag) {
        case Flag::pass:
            return tr("pass");
        case Flag::not_evaluated:
            return tr("not evaluated");
        case Flag::suspect:
            return tr("suspect");
        case Flag::fail:
            return tr("fail");
        case Flag::missing:
            break;
    }
    return tr("missing");
}

TriggerRow trigger_row(const EventAnswer& answer, const Site* site, Instant as_at) {
    const TriggerRecord& record = answer.record;
    TriggerRow row;
    const TriggerEvent& event = record.event;
    row.condition = QString::fromStdString(record.of->number);
    row.tier_number = record.version().rule.tier;
    row.tier = row.tier_number ? QString::number(*row.tier_number) : QString();
    row.site = QString::fromStdString(event.site);
    row.unit = site == nullptr ? QString() : QString::fromStdString(site->unit);
    row.statistic = statistic_name(*record.of);
    row.over_since = event.over_since;
    row.start = event.start;
    row.end = event.end;
    row.peak = event.peak;
    row.peak_at = event.peak_at;
    row.due = record.due;
    QStringList responses, to;
    for (const Response& response : record.responses) {
        responses << action_word(response.action);
        const QString whom = QString::fromStdString(response.to);
        if (!whom.isEmpty() && !to.contains(whom)) to << whom;
    }
    row.responses = responses.join(QStringLiteral(", "));
    row.to = to.join(QStringLiteral(", "));
    if (const Event* found = answer.row) {
        row.answer = found->event.empty() ? tr("yes") : QString::fromStdString(found->event);
        row.said = *found;
        for (const auto lacks : answer.lacking)
            row.lacking << state_word(lacks);
    }
    row.late = answer.state == AnswerState::late;
    row.answered = row.late || answer.state == AnswerState::answered || answer.state == AnswerState::undated;
    say_state(row, as_at);
    return row;
}

std::vector<EventBar> event_bars(const std::vector<TriggerRow>& rows, Instant as_at) {
    QStringList conditions;
    for (const TriggerRow& row : rows) {
        if (!conditions.contains(row.condition)) conditions << row.condition;
    }
    conditions.sort();
    std::vector<EventBar> bars;
    for (const TriggerRow& row : rows) {
        bars.push_back({row.span(as_at), !row.end, QStringLiteral("%1 · %2").arg(row.condition, row.site),
                        row.state, std::size_t(conditions.indexOf(row.condition))});
    }
    return bars;
}

std::vector<MonthRow> month_rows(TurbidityWatch& watch, const Zone& zone) {
    std::vector<MonthRow> rows;
    for (const Site& site : watch.sites()) {
        const SiteSeries* series = watch.series(site.site);
        for (const MonthComplete& month : watch.months(site.site)) {
            const auto span = month_named(zone, month.month);
            if (!span) continue;
            rows.push_back({QString::fromStdString(site.site), QString::fromStdString(month.month),
                            month.share(),
                            sum_of(*series, first_from(*series, span->from), first_from(*series, span->to)),
                            month.expected});
        }
    }
    std::stable_sort(rows.begin(), rows.end(),
                     [](const MonthRow& a, const MonthRow& b) { return a.month > b.month; });
    return rows;
}

std::vector<ReadingRow> reading_rows(const std::string& site, const SiteSeries& series) {
    std::vector<ReadingRow> rows;
    for (std::size_t i = 0; i < series.readings.size(); ++i)
        rows.push_back({QString::fromStdString(site), series.readings[i].time, series.readings[i].value,
                        series.flags[i], series.verdicts[i]});
    return rows;
}

std::vector<ViewRow> view_rows(const TurbidityView& view) {
    std::vector<ViewRow> rows;
    for (const ViewSite& site : view.sites) {
        const QString name = QString::fromStdString(site.site.site);
        for (const ViewColumn& column : site.columns)
            rows.push_back({name, column.from, column.sum, {}, {}, {}, {}, {}});
        for (const ViewTrace& trace : site.traces) {
            for (const ViewStep& step : trace.steps)
                rows.push_back({name,
                                step.from,
                                {},
                                QString::fromStdString(trace.of.number),
                                step.statistic_low,
                                step.statistic_high,
                                step.level_low,
                                step.level_high});
        }
    }
    return rows;
}

namespace {

/// "Last reading 3 h 5 min ago, at 14:10."
QString last_reading(const TriggerState& state, Instant at, const Zone& zone, const QLocale& locale) {
    if (!state.standing.at) return tr("No reading yet. ");
    const QString when = moment_shown(*state.standing.at, zone, locale);
    const QString age = span_shown(at - *state.standing.at);
    return is_stale(state, at) ? tr("Last reading %1 ago, at %2: too old to tell. ").arg(age, when)
                               : tr("Last judged at %1, %2 ago. ").arg(when, age);
}

}  // namespace

SiteStands site_stands(const std::vector<TriggerState>& states, const std::string& site, Instant at,
                       const Zone& zone, const QLocale& locale) {
    SiteStands stands;
    int worst = -1;
    QStringList said;
    for (const TriggerState& state : states) {
        if (state.standing.site != site) continue;
        const Judged& last = state.standing.last;
        const QString number = QString::fromStdString(state.of->number);
        const auto shown = [&](const std::optional<double>& value) {
            return value ? number_shown(*value, 1, locale) : tr("not known");
        };
        // An event stays open through silence; a hold does not go on through it.
        const bool told = last.telling != Telling::cannot_tell && !is_stale(state, at);
        const bool silent = is_stale(state, at) && state.standing.at;
        const int rank = state.open ? 3 : !told ? 1 : state.standing.over_since ? 2 : 0;
        if (rank > worst) {
            worst = rank;
            stands.state = rank == 3   ? State::hold
                           : rank == 2 ? State::attention
                           : rank == 1 ? State::unknown
                                       : State::clear;
            stands.word =
                rank == 3   ? tr("event open: %1").arg(number)
                : rank == 2 ? tr("over %1, not passed yet").arg(number)
                : rank == 1
                    ? (silent
                           ? tr("cannot tell: last reading %1 ago").arg(span_shown(at - *state.standing.at))
                           : tr("cannot tell"))
                    : tr("inside every trigger");
        }
        said << (told ? tr("%1: %2 against %3").arg(number, shown(last.compared), shown(last.level))
                 : silent || !state.standing.at
                     ? tr("%1: cannot tell").arg(number)  // how old the last reading is was said before
                     : tr("%1: cannot tell, %2")
                           .arg(number, book_text(why_site_is_not_told(state, at, zone))));
        if (said.size() == 1) stands.sentence = last_reading(state, at, zone, locale);
    }
    stands.sentence += said.join(QStringLiteral(" · "));
    if (said.isEmpty()) {
        stands.word = tr("no trigger");
        stands.sentence = tr("No condition of this book watches the turbidity of this site.");
    }
    return stands;
}

}  // namespace spoilbook::form
