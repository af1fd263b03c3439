// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/consent/standing_rows.h"
#include "forms/works/figures_source.h"
#include "forms/works/limit_rows.h"
#include "model/progress/forecast.h"

namespace spoilbook::form {

/// One condition of the board, ready to be read; a limit for each of several has a row for each.
struct ConditionRow {
    const Condition* condition = nullptr;  ///< in the season of the figures that it was made of
    QString number, kind, sentence, notes, wording, open_question, settled;
    State state = State::unknown;
    QString word;                               ///< of the state
    std::optional<ConditionStanding> standing;  ///< of what is no limit; nothing while it is worked out
    std::optional<LimitRow> limit;              ///< of a quantity
    std::optional<Day> bites;                   ///< half of the forecast's draws have met it by then
    QString bites_text;
};

/// Every condition in force at the figures' as-at, in the order of the book.
std::vector<ConditionRow> condition_rows(const Figures& figures, const QLocale& locale);
/// Puts in how the conditions stand that are no limits.
void put_standings(std::vector<ConditionRow>& rows, const std::map<Id, ConditionStanding>& standings);
/// Puts in on which day each limit bites.
void put_bites(std::vector<ConditionRow>& rows, const Forecast& forecast, const QLocale& locale);
std::vector<Column<ConditionRow>> condition_columns(const QLocale& locale);
/// How many conditions stand how, in one sentence, the worst first; one with a row for each of several stands
/// as the worst of them.
QString conditions_sentence(const std::vector<ConditionRow>& rows);

}  // namespace spoilbook::form
