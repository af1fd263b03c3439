// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <nlohmann/json_fwd.hpp>

#include "model/place/ground_map.h"

namespace spoilbook {

/// How far a place is on the right side of the line that a condition of kind place draws, its inset taken
/// off, m on the map; negative on the wrong side. Changes by no more than a metre a metre. Empty where the
/// book has no such ground, cell or exclusion, or no map. The season and the map must outlive it.
std::function<double(EastNorth)> place_room(const nlohmann::json& body, const Season& season,
                                            const GroundMap& map);

}  // namespace spoilbook
