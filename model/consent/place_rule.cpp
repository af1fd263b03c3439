// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/place_rule.h"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "model/consent/place_room.h"

namespace spoilbook {

namespace {

using nlohmann::json;

CheckReason reason(CheckState state, std::string why) {
    CheckReason reason;
    reason.state = state;
    reason.why = std::move(why);
    return reason;
}

}  // namespace

CheckReason judge_place(const json& body, const Season& season, const GroundMap& map,
                        std::optional<EastNorth> place, double u_m) {
    if (!place) return reason(CheckState::cannot_tell, "no position was given");
    if (body.contains("position_u_m_max") && u_m > body.at("position_u_m_max").get<double>()) {
        return reason(CheckState::hold, "the position is less sure than the condition asks");
    }
    const auto room_at = place_room(body, season, map);
    if (!room_at) return reason(CheckState::cannot_tell, "the place that it names is not in the book");
    const double room = room_at(*place);
    if (room < 2 * u_m)
        return reason(CheckState::hold,
                      fmt::format("the place is {:.0f} m on the wrong side of the line, uncertainty counted",
                                  2 * u_m - room));
    return reason(CheckState::clear, "");
}

}  // namespace spoilbook
