// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/place_rule.h"

#include <fmt/format.h>

#include <cmath>
#include <nlohmann/json.hpp>

namespace spoilbook {

namespace {

using nlohmann::json;

CheckReason reason(CheckState state, std::string why) {
    CheckReason reason;
    reason.state = state;
    reason.why = std::move(why);
    return reason;
}

/// Distance to the boundary of what a condition names, positive inside; nothing where it is not known.
std::optional<double> distance_in(const json& target, const Season& season, const GroundMap& map,
                                  EastNorth place) {
    if (target.contains("circle")) {
        const auto& circle = target.at("circle");
        if (!map.crs()) return std::nullopt;
        const auto centre =
            map.crs()->project(LonLat{circle.at("lat").get<double>(), circle.at("lon").get<double>()});
        return circle.at("radius_m").get<double>() -
               std::hypot(place.easting_m - centre.easting_m, place.northing_m - centre.northing_m);
    }
    if (target.contains("ground")) {
        for (const auto& ground : season.grounds.rows()) {
            const Area* area = ground.ground == target.at("ground").get<std::string>()
                                   ? map.open_ground(ground.id)
                                   : nullptr;
            if (area != nullptr) return signed_distance_m(*area, place);
        }
        return std::nullopt;
    }
    for (const char* part : {"cell", "exclusion"}) {
        if (!target.contains(part)) continue;
        for (const auto& cell : season.cells.rows()) {
            const Area* area = cell.cell == target.at(part).get<std::string>() ? map.cell(cell.id) : nullptr;
            if (area != nullptr) return signed_distance_m(*area, place);
        }
    }
    return std::nullopt;
}

}  // namespace

CheckReason judge_place(const json& body, const Season& season, const GroundMap& map,
                        std::optional<EastNorth> place, double u_m) {
    if (!place) return reason(CheckState::cannot_tell, "no position was given");
    if (body.contains("position_u_m_max") && u_m > body.at("position_u_m_max").get<double>()) {
        return reason(CheckState::hold, "the position is less sure than the condition asks");
    }
    const bool inside = body.contains("inside");
    const auto distance = distance_in(body.at(inside ? "inside" : "outside"), season, map, *place);
    if (!distance) return reason(CheckState::cannot_tell, "the place that it names is not in the book");
    const double room = (inside ? *distance : -*distance) - body.value("inset_m", 0.0);
    if (room < 2 * u_m)
        return reason(CheckState::hold,
                      fmt::format("the place is {:.0f} m on the wrong side of the line, uncertainty counted",
                                  2 * u_m - room));
    return reason(CheckState::clear, "");
}

}  // namespace spoilbook
