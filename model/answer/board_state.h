// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "model/answer/board.h"
#include "model/answer/untold_water.h"

namespace spoilbook {

/// How a condition stands by what its row holds, at the board's instant.
BoardState board_state(const BoardRow& row, Instant at);

/// What of a condition the program does not judge, in words; empty where it judges all of it.
std::string not_judged(const Season& season, const Condition& condition, const nlohmann::json& body);

/// Why how the water stands under a condition on turbidity cannot be told, site by site, in words; empty
/// where it can be told of every site.
std::string why_water_is_not_told(const BoardRow& row, Instant at, const Zone& zone);

}  // namespace spoilbook
