// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/place_room.h"

#include <cmath>
#include <nlohmann/json.hpp>

namespace spoilbook {

namespace {

using nlohmann::json;
using Distance = std::function<double(EastNorth)>;

Distance to_circle(const json& circle, const GroundMap& map) {
    if (!map.crs()) return {};
    const LonLat at{circle.at("lat").get<double>(), circle.at("lon").get<double>()};
    const EastNorth centre = map.crs()->project(at);
    const double radius_m = circle.at("radius_m").get<double>();
    return [centre, radius_m](EastNorth place) {
        return radius_m -
               std::hypot(place.easting_m - centre.easting_m, place.northing_m - centre.northing_m);
    };
}

const Area* outline(const json& target, const Season& season, const GroundMap& map) {
    if (target.contains("ground")) {
        for (const auto& ground : season.grounds.rows()) {
            if (ground.ground == target.at("ground").get<std::string>()) return map.open_ground(ground.id);
        }
    }
    for (const char* part : {"cell", "exclusion"}) {
        if (!target.contains(part)) continue;
        for (const auto& cell : season.cells.rows()) {
            const bool named = cell.cell == target.at(part).get<std::string>();
            if (named && map.cell(cell.id) != nullptr) return map.cell(cell.id);
        }
    }
    return nullptr;
}

/// Distance to the boundary of what a condition names, positive inside.
Distance distance_to(const json& target, const Season& season, const GroundMap& map) {
    if (target.contains("circle")) return to_circle(target.at("circle"), map);
    const Area* area = outline(target, season, map);
    if (area == nullptr) return {};
    return [area](EastNorth place) { return signed_distance_m(*area, place); };
}

}  // namespace

std::function<double(EastNorth)> place_room(const json& body, const Season& season, const GroundMap& map) {
    const bool inside = body.contains("inside");
    const Distance distance = distance_to(body.at(inside ? "inside" : "outside"), season, map);
    if (!distance) return {};
    const double sign = inside ? 1 : -1, inset_m = body.value("inset_m", 0.0);
    return [distance, sign, inset_m](EastNorth place) { return sign * distance(place) - inset_m; };
}

}  // namespace spoilbook
