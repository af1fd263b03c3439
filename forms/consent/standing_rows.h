// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>

#include "forms/shared/table_model.h"
#include "forms/works/load_ask.h"
#include "model/answer/board.h"

namespace spoilbook::form {

/// One thing that a condition was judged by: a release, trip or load, a passed trigger, a duty's time.
struct StandingRow {
    QString what, word, why, at_text, at_copy, load;
    State state = State::clear;
    Instant at;
};

/// How a condition that is no limit stands, ready to be read: no pointers into the season.
struct ConditionStanding {
    State state = State::unknown;
    QString word;     ///< within, breached, over, cannot tell, …
    QString summary;  ///< "601 judged: 1 breached, 4 cannot be told."
    std::vector<StandingRow> rows;
    QString without_rows;  ///< said where there are none; empty: nothing has fallen to it yet
};

/// What a finding says, and the same of all findings on one condition: shape and word.
std::pair<State, QString> compliance_shown(Compliance state);
StandingRow standing_row(const Finding& found, const Zone& zone, const QLocale& locale);

/// Of every row of the board that is no limit, by its condition.
std::map<Id, ConditionStanding> condition_standings(const Board& board, const Zone& zone,
                                                    const QLocale& locale);
/// What stands on the sheet: how it stands, then everything that it was judged by, the worst first.
QWidget* standing_page(const QString& sentence, ConditionStanding standing, const OpensLoad& open_load,
                       QWidget* parent);

}  // namespace spoilbook::form
