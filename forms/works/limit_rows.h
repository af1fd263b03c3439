// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLocale>

#include "forms/shared/table_model.h"
#include "model/answer/standing.h"

namespace spoilbook::form {

/// One limit, ready to be read. Numbers in the unit that is shown (shares in %).
struct LimitRow {
    std::size_t place = 0;  ///< in the states it was made from
    QString name, what, unit, window;
    QString counted_unit;  ///< of what it counts: of a share, m³ or t and not %
    State state = State::unknown;
    QString word;  ///< "within", "95 % reached", "over"
    int decimals = 0;
    double used = 0, used_u = 0;
    std::optional<double> limit, headroom, used_share, p_over;
    std::optional<Instant> first_over;
    QString first_over_text, first_over_copy;
    QString text, wording, open_question, settled;  ///< of the condition
};

std::vector<LimitRow> limit_rows(const std::vector<LimitState>& states, const Zone& zone,
                                 const QLocale& locale);

/// The columns of a headroom table: used rounds up, headroom down, copies are exact.
std::vector<Column<LimitRow>> limit_columns(const QLocale& locale);

/// The state's shape and its word.
std::pair<State, QString> standing_shown(const LimitState& state, const QLocale& locale);

}  // namespace spoilbook::form
