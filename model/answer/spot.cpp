// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/spot.h"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <limits>
#include <utility>

#include "model/place/haul_distance.h"
#include "model/unit/shown.h"

namespace spoilbook {

namespace {

constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

double distance_to(const GroundMap& map, const Area& ground, LonLat place) {
    const EastNorth corner = ground.parts.front().rings.front().points.front();
    const double way_m = haul_distance_m(place, map.crs()->unproject(corner));
    // Far off the map its metres mean nothing.
    if (way_m > 2 * odd_distance_m) return -way_m;
    const EastNorth at = map.crs()->project(place);
    return is_known(at) ? signed_distance_m(ground, at) : -way_m;
}

Slip slip_of(const GroundMap& map, const Area& ground, LonLat typed) {
    const std::array<std::pair<Slip, LonLat>, 4> tries{{
        {Slip::latitude_sign, {-typed.lat_deg, typed.lon_deg}},
        {Slip::longitude_sign, {typed.lat_deg, -typed.lon_deg}},
        {Slip::both_signs, {-typed.lat_deg, -typed.lon_deg}},
        {Slip::exchanged, {typed.lon_deg, typed.lat_deg}},
    }};
    for (const auto& [slip, place] : tries) {
        if (is_known(place) && distance_to(map, ground, place) >= -odd_distance_m) return slip;
    }
    return Slip::none;
}

std::string metres(double distance_m) {
    if (distance_m < 10'000) return fmt::format("{:.0f} m", distance_m);
    return fmt::format("{:.0f} km", distance_m / 1000);
}

std::string question_of(Slip slip) {
    switch (slip) {
        case Slip::latitude_sign:
            return "is the latitude's sign right?";
        case Slip::longitude_sign:
            return "is the longitude's sign right?";
        case Slip::both_signs:
            return "are both signs right?";
        case Slip::exchanged:
            return "are latitude and longitude exchanged?";
        case Slip::none:
            break;
    }
    return "is it typed right?";
}

}  // namespace

Spot spot_of(const Season& season, const GroundMap& map, LonLat place, std::optional<double> position_u_m,
             const Id& ground) {
    Spot spot;
    spot.distance_m = unknown;
    spot.position_u_m = position_u_m.value_or(usual_position_u_m);
    if (!map.crs() || !is_known(place)) return spot;
    const Area* nearest = nullptr;
    Id nearest_id;
    for (const auto& one : season.grounds.rows()) {
        const Area* area = !ground || one.id == ground ? map.open_ground(one.id) : nullptr;
        if (area == nullptr || area->parts.empty()) continue;
        const double distance_m = distance_to(map, *area, place);
        if (nearest != nullptr && distance_m <= spot.distance_m) continue;
        nearest = area;
        nearest_id = one.id;
        spot.ground = one.ground;
        spot.distance_m = distance_m;
    }
    if (nearest == nullptr) return spot;
    spot.verdict = verdict(spot.distance_m, spot.position_u_m);
    spot.odd = spot.distance_m < -odd_distance_m;
    if (spot.odd) {
        spot.slip = slip_of(map, *nearest, place);
    } else if (const Cell* cell =
                   season.cells.find(map.cell_holding(nearest_id, map.crs()->project(place)))) {
        spot.cell = cell->cell;
    }
    return spot;
}

std::optional<Spot> spot_of_row(const Season& season, const GroundMap& map, const Kind& kind,
                                const Row& row) {
    const auto value = [&](const char* column) -> const Value* {
        const auto index = kind.index_of(column);
        return index ? &row.values[*index] : nullptr;
    };
    const auto number = [&](const char* column) -> std::optional<double> {
        const Value* held = value(column);
        const double* degrees = held == nullptr ? nullptr : std::get_if<double>(held);
        return degrees == nullptr ? std::nullopt : std::optional(*degrees);
    };
    const auto lat = number("lat"), lon = number("lon");
    const Value* ground = value("ground");
    if (!lat || !lon || ground == nullptr) return std::nullopt;
    const Id* id = std::get_if<Id>(ground);
    return spot_of(season, map, {*lat, *lon}, number("position_u_m"), id == nullptr ? Id{} : *id);
}

std::string spot_text(const Spot& spot) {
    if (spot.ground.empty()) return "no ground is on the map to hold the position against";
    const std::string off = metres(std::abs(spot.distance_m));
    if (spot.odd) return fmt::format("{} from {}: {}", off, spot.ground, question_of(spot.slip));
    const std::string side = spot.distance_m >= 0 ? "inside" : "outside";
    std::string text = fmt::format("{} {}, {} from its edge", side, spot.ground, off);
    if (spot.verdict != PlaceVerdict::cannot_tell) return text;
    return fmt::format("{}, but the position is sure to ± {} (95 %) only: cannot tell", text,
                       metres(rounded_up(2 * spot.position_u_m, 0)));
}

}  // namespace spoilbook
