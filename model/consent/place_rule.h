// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "model/consent/release_check.h"

namespace spoilbook {

/// What a condition of kind place says of one position before the act: within 2u of a line it holds. Answers
/// the state and why. `place` nothing: cannot tell.
CheckReason judge_place(const nlohmann::json& body, const Season& season, const GroundMap& map,
                        std::optional<EastNorth> place, double u_m);

}  // namespace spoilbook
