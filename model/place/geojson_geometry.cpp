// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/geojson_geometry.h"

#include <fmt/format.h>

#include <cmath>
#include <string>

namespace spoilbook {
namespace {

/// A map edge longer than this is a ring torn apart at the rim of the map, not ground.
constexpr double longest_edge_m = 5e6;

std::string position(std::size_t part, std::size_t ring, std::size_t point) {
    return fmt::format("part {} ring {} point {}", part + 1, ring + 1, point + 1);
}

Refusal refused(std::string where, std::string what, std::string mend) {
    return {"geometry", std::move(where), std::move(what), std::move(mend)};
}

/// Calls `visit(part, ring, point, first, second)` for every point.
template <class Visit>
void each_point(const GeoJsonCoordinates& coordinates, Visit visit) {
    for (std::size_t part = 0; part < coordinates.size(); ++part) {
        for (std::size_t ring = 0; ring < coordinates[part].size(); ++ring) {
            for (std::size_t point = 0; point < coordinates[part][ring].size(); ++point) {
                const auto& [first, second] = coordinates[part][ring][point];
                visit(part, ring, point, first, second);
            }
        }
    }
}

/// The same nesting, the first of a pair as easting (or longitude).
Area as_area(const GeoJsonCoordinates& coordinates) {
    Area area;
    for (const auto& part : coordinates) {
        Polygon& polygon = area.parts.emplace_back();
        for (const auto& ring : part) {
            Ring& line = polygon.rings.emplace_back();
            for (const auto& [first, second] : ring)
                line.points.push_back({first, second});
        }
    }
    return area;
}

Refusals out_of_range(const GeoJsonCoordinates& coordinates) {
    Refusals refusals;
    each_point(coordinates, [&](std::size_t part, std::size_t ring, std::size_t point, double lon,
                                double lat) {
        if (std::abs(lat) <= 90 && std::abs(lon) <= 360) return;
        if (!refusals.empty()) return;
        refusals.push_back(refused(position(part, ring, point),
                                   fmt::format("longitude {}, latitude {} is no place on earth", lon, lat),
                                   "give degrees, longitude first; or say that these are metres"));
    });
    return refusals;
}

/// True where a ring jumps over the 180th meridian or the parts were cut along it.
bool crosses_180(const GeoJsonCoordinates& coordinates) {
    bool at_east_end = false, at_west_end = false, jumps = false;
    each_point(coordinates, [&](std::size_t part, std::size_t ring, std::size_t point, double lon, double) {
        at_east_end = at_east_end || lon == 180;
        at_west_end = at_west_end || lon == -180;
        if (point == 0) return;
        jumps = jumps || std::abs(lon - coordinates[part][ring][point - 1].first) > 180;
    });
    return jumps || (at_east_end && at_west_end);
}

GeoJsonCoordinates eastward_from_zero(GeoJsonCoordinates coordinates) {
    for (auto& part : coordinates) {
        for (auto& ring : part) {
            for (auto& point : ring) {
                if (point.first < 0) point.first += 360;
            }
        }
    }
    return coordinates;
}

Checked<Area> sound(Area area) {
    if (auto fault = why_invalid(area)) {
        return refused("", *fault, "draw the area with closed rings that do not cross");
    }
    return area;
}

Refusals project_in_place(Area& area, const Crs& crs) {
    for (std::size_t part = 0; part < area.parts.size(); ++part) {
        for (std::size_t ring = 0; ring < area.parts[part].rings.size(); ++ring) {
            auto& points = area.parts[part].rings[ring].points;
            std::vector<LonLat> places;
            places.reserve(points.size());
            for (const EastNorth& degrees : points)
                places.push_back({degrees.northing_m, degrees.easting_m});
            std::vector<EastNorth> map = crs.project(places);
            for (std::size_t i = 0; i < map.size(); ++i) {
                const bool torn =
                    i > 0 && std::hypot(map[i].easting_m - map[i - 1].easting_m,
                                        map[i].northing_m - map[i - 1].northing_m) > longest_edge_m;
                if (is_known(map[i]) && !torn) continue;
                return {refused(position(part, ring, i),
                                fmt::format("longitude {}, latitude {} is off the map of {}",
                                            places[i].lon_deg, places[i].lat_deg, crs.name()),
                                "use a CRS made for these waters")};
            }
            points = std::move(map);
        }
    }
    return {};
}

/// Joined in degrees, where both sides of the cut lie on one straight line. The parts have to be sound one by
/// one, and to overlap nowhere, so that the joining mends no fault unseen.
Checked<Area> joined_along_180(const Area& degrees, const Crs& crs) {
    std::vector<Area> parts;
    double sum = 0;
    for (const Polygon& part : degrees.parts) {
        parts.push_back(Area{{part}});
        sum += area_m2(parts.back());
        Area on_map = parts.back();
        if (Refusals refusals = project_in_place(on_map, crs); !refusals.empty()) return refusals;
        if (Checked<Area> checked = sound(std::move(on_map)); !checked) return checked;
    }
    Area joined = together(parts);
    if (sum - area_m2(joined) > 1e-9 * sum) {
        return refused("", "two parts of the area overlap", "draw the parts side by side");
    }
    return joined;
}

}  // namespace

Checked<Area> area_from_lon_lat(const GeoJsonCoordinates& coordinates, const Crs& crs) {
    if (Refusals refusals = out_of_range(coordinates); !refusals.empty()) return refusals;
    const bool crosses = crosses_180(coordinates);
    Area area = as_area(crosses ? eastward_from_zero(coordinates) : coordinates);
    if (crosses && area.parts.size() > 1) {
        Checked<Area> joined = joined_along_180(area, crs);
        if (!joined) return joined;
        area = std::move(*joined);
    }
    if (Refusals refusals = project_in_place(area, crs); !refusals.empty()) return refusals;
    return sound(std::move(area));
}

Checked<Area> area_from_projected(const GeoJsonCoordinates& coordinates) {
    bool like_degrees = true;
    each_point(coordinates, [&](std::size_t, std::size_t, std::size_t, double first, double second) {
        like_degrees = like_degrees && std::abs(first) <= 180 && std::abs(second) <= 90;
    });
    if (like_degrees && !coordinates.empty()) {
        return refused("", "every coordinate is within 180 and 90: these are degrees, not metres",
                       "leave out the crs member, or give eastings and northings");
    }
    return sound(as_area(coordinates));
}

}  // namespace spoilbook
