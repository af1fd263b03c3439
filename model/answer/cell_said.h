// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/place/ground_map.h"
#include "model/record/kind.h"
#include "model/record/value.h"

namespace spoilbook {

/// What the written cell of a release and its position say of each other.
enum class CellSays {
    nothing,      ///< nothing is odd, or nothing can be told: no cells, no shape, not released
    by_position,  ///< blank, and the position lies in `lies_in`: limits by cell count it there
    no_cell,      ///< blank, and no position is in a cell of a ground that is written: it counts under none
    contradicts,  ///< the position is outside the written cell, surely: 2u or more
    beside        ///< outside it, but by less than 2u
};

struct CellSaid {
    CellSays says = CellSays::nothing;
    std::string ground;       ///< whose cells were looked at
    std::string written;      ///< the cell as logged; may be empty
    std::string lies_in;      ///< the cell that holds the position; may be empty
    bool has_place = false;   ///< a position is written
    double outside_m = 0;     ///< of the written cell's edge
    double position_u_m = 0;  ///< standard uncertainty (68 %) that was judged with
};

/// Of a record as it stands: a release, or a trip that carries its own. A blank ground is the trip's; of a
/// book with one ground, that one. A trip that released nothing yet is asked for no cell, but one that is
/// written is held against its position. Of another kind: nothing.
CellSaid cell_said(const Season& season, const GroundMap& map, const Kind& kind, const Row& row);

/// One line for a person; empty where it says nothing.
std::string cell_said_text(const CellSaid& said);

}  // namespace spoilbook
