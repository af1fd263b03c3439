// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/place_room.h"

#include <cmath>
#include <nlohmann/json.hpp>

#include "model/consent/scope_filter.h"

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

/// Of that name; of several grounds' the one in a ground that the condition applies to.
const Area* part_of_a_ground(const std::string& name, const json& body, const Season& season,
                             const GroundMap& map) {
    const Scope scope = scope_from(body);
    const Area* found = nullptr;
    for (const auto& cell : season.cells.rows()) {
        const Area* area = cell.cell == name ? map.cell(cell.id) : nullptr;
        if (area == nullptr) continue;
        const auto* ground = season.grounds.find(cell.ground);
        if (ground != nullptr && listed(scope.grounds, ground->ground)) return area;
        if (found == nullptr) found = area;
    }
    return found;
}

const Area* outline(const json& target, const json& body, const Season& season, const GroundMap& map) {
    if (target.contains("ground")) {
        for (const auto& ground : season.grounds.rows()) {
            if (ground.ground == target.at("ground").get<std::string>()) return map.open_ground(ground.id);
        }
    }
    for (const char* part : {"cell", "exclusion"}) {
        if (!target.contains(part)) continue;
        const auto* area = part_of_a_ground(target.at(part).get<std::string>(), body, season, map);
        if (area != nullptr) return area;
    }
    return nullptr;
}

/// Distance to the boundary of what a condition names, positive inside.
Distance distance_to(const json& target, const json& body, const Season& season, const GroundMap& map) {
    if (target.contains("circle")) return to_circle(target.at("circle"), map);
    const Area* area = outline(target, body, season, map);
    if (area == nullptr) return {};
    return [area](EastNorth place) { return signed_distance_m(*area, place); };
}

}  // namespace

std::function<double(EastNorth)> place_room(const json& body, const Season& season, const GroundMap& map) {
    const bool inside = body.contains("inside");
    const Distance distance = distance_to(body.at(inside ? "inside" : "outside"), body, season, map);
    if (!distance) return {};
    const double sign = inside ? 1 : -1, inset_m = body.value("inset_m", 0.0);
    return [distance, sign, inset_m](EastNorth place) { return sign * distance(place) - inset_m; };
}

}  // namespace spoilbook
