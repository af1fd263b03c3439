// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLocale>

#include "forms/consent/turbidity_chart.h"
#include "forms/shared/table_model.h"
#include "model/answer/event_answers.h"
#include "model/record/season.h"

namespace spoilbook::form {

/// One passed trigger ready to be read.
struct TriggerRow {
    QString condition, tier, site, unit, statistic, responses, to;
    std::optional<double> tier_number;
    Instant over_since, start;
    std::optional<Instant> end, due;
    double peak = 0;
    Instant peak_at;
    QString
        answer;  ///< the label of the event record that is its answer; "yes" where that has none; blank: none
    Event said;  ///< that record, where there is one
    QStringList lacking;                  ///< what the return misses in it
    bool answered = false, late = false;  ///< as the return counts it
    State state = State::attention;
    QString word;   ///< "open, not answered"
    QString clock;  ///< "1 h 20 min left", "overdue by 3 d 2 h"

    /// To the as-at where it is open.
    [[nodiscard]] Period span(Instant as_at) const { return {over_since, end.value_or(as_at)}; }
};

/// One site's readings of one month.
struct MonthRow {
    QString site, month;
    std::optional<double> share;
    ReadingSum sum;
    double expected = 0;
};

/// One reading with what was said of it.
struct ReadingRow {
    QString site;
    Instant at;
    std::optional<double> value;
    Flag flag = Flag::missing;
    Verdicts verdicts;
};

/// One line of the plot's numbers.
struct ViewRow {
    QString site;
    Instant from;
    ReadingSum sum;
    QString condition;
    std::optional<double> statistic_low, statistic_high, level_low, level_high;
};

/// Answered is what the return and `sbk turbidity` take for it.
TriggerRow trigger_row(const EventAnswer& answer, const Site* site, Instant as_at);
std::vector<EventBar> event_bars(const std::vector<TriggerRow>& rows, Instant as_at);
std::vector<MonthRow> month_rows(TurbidityWatch& watch, const Zone& zone);
std::vector<ReadingRow> reading_rows(const std::string& site, const SiteSeries& series);
std::vector<ViewRow> view_rows(const TurbidityView& view);

std::vector<Column<TriggerRow>> trigger_columns(const Zone& zone, const QLocale& locale);
std::vector<Column<MonthRow>> month_columns(const QLocale& locale);
std::vector<Column<ReadingRow>> reading_columns(const Zone& zone, const QLocale& locale);
std::vector<Column<ViewRow>> view_columns(const Zone& zone, const QLocale& locale);

/// What a response asks for, in words.
QString action_word(const std::string& action);
/// "2 d 3 h", "1 h 20 min", "4 min"
QString span_shown(std::int64_t ms);
/// pass, not evaluated, suspect, fail, missing; with a shape before it in a table.
QString flag_word(Flag flag);
/// How the site stands under all its conditions at that instant, worst first. Where its last reading is older
/// than they let one be, it cannot be told, and how old it is stands first.
struct SiteStands {
    State state = State::unknown;
    QString word, sentence;
};
SiteStands site_stands(const std::vector<TriggerState>& states, const std::string& site, Instant at,
                       const Zone& zone, const QLocale& locale);

}  // namespace spoilbook::form
