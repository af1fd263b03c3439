// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/map_ground.h"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "model/place/geojson_geometry.h"

namespace spoilbook {

namespace {

using Ring = std::vector<std::pair<double, double>>;

std::vector<Ring> rings_of(const nlohmann::json& polygon) {
    std::vector<Ring> rings;
    for (const auto& ring : polygon) {
        Ring& points = rings.emplace_back();
        for (const auto& position : ring)
            points.emplace_back(position.at(0).get<double>(), position.at(1).get<double>());
    }
    return rings;
}

GeoJsonCoordinates coordinates_of(const nlohmann::json& geometry) {
    GeoJsonCoordinates parts;
    const auto& coordinates = geometry.at("coordinates");
    if (geometry.at("type") == "Polygon") {
        parts.push_back(rings_of(coordinates));
        return parts;
    }
    for (const auto& polygon : coordinates)
        parts.push_back(rings_of(polygon));
    return parts;
}

}  // namespace

std::string MapGround::name() const {
    return epsg ? fmt::format("EPSG:{}", *epsg) : "";
}

Checked<Area> area_of(const std::string& geometry, const std::string& crs_name, const MapGround& map) {
    GeoJsonCoordinates coordinates;
    try {
        coordinates = coordinates_of(nlohmann::json::parse(geometry));
    } catch (const nlohmann::json::exception&) {
        return Refusal{"geometry", "", "the outline does not read", "draw it again"};
    }
    if (!crs_name.empty()) return area_from_projected(coordinates);
    if (!map.crs) {
        return Refusal{"no-crs", "", "the book has no reference system that could hold this outline",
                       "give harbour.json an EPSG code of a projected system in metres"};
    }
    return area_from_lon_lat(coordinates, *map.crs);
}

}  // namespace spoilbook
