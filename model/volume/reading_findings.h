// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>
#include <vector>

#include "model/volume/load_figures.h"

namespace spoilbook {

/// What is odd about one column of a load's readings. All of it is kept; some of it gives no figure.
enum class Oddity {
    outside_table,      ///< `reading` m lies outside `low` to `high`, the barge's table: no figure
    centimetres,        ///< `reading` m is over twice the table's greatest, and inside it as centimetres
    apart,              ///< dips from `low` to `high` m, over half of the table
    water_below_spoil,  ///< the water on the spoil reads lower than the spoil
    no_table,           ///< the barge has no table to read it by: no figure
    marks_missing,      ///< neither four nor six marks: no figure
    light_heavier,      ///< light she is heavier than loaded: no figure
    no_light,           ///< loaded draughts without light ones at or before loading: no figure
    no_full,            ///< light draughts without loaded ones: no figure yet
    over_capacity,      ///< `reading` m³ by this column is over the capacity, `high` m³, by more than 2u
    left_over,          ///< `reading` m³ left before is more than the load holds
};

/// For beside the box that the reading was typed into.
struct ReadingFinding {
    std::string_view column;  ///< of loads.csv: "dips_m"
    Oddity what = Oddity::outside_table;
    double reading = 0, low = 0, high = 0;
};

/// At most one finding a column, the gravest: what gives no figure before what is odd. Thresholds as in
/// load_notes.h; common practice, no source. `figures` are those of this load.
std::vector<ReadingFinding> reading_findings(const LoadIndex& index, const Load& load,
                                             const LoadFigures& figures);

}  // namespace spoilbook
