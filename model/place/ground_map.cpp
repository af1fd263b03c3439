// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/ground_map.h"

#include <nlohmann/json.hpp>

#include "model/place/geojson_geometry.h"

namespace spoilbook {

namespace {

GeoJsonCoordinates coordinates_of(const nlohmann::json& geometry) {
    GeoJsonCoordinates parts;
    auto polygons = geometry.at("coordinates");
    if (geometry.at("type") == "Polygon") polygons = nlohmann::json::array({polygons});
    for (const auto& polygon : polygons) {
        auto& rings = parts.emplace_back();
        for (const auto& ring : polygon) {
            auto& points = rings.emplace_back();
            for (const auto& point : ring)
                points.emplace_back(point.at(0).get<double>(), point.at(1).get<double>());
        }
    }
    return parts;
}

}  // namespace

Checked<Area> area_from_text(const std::string& geometry, const std::string& crs_text, const Crs& crs) {
    try {
        const auto coordinates = coordinates_of(nlohmann::json::parse(geometry));
        return crs_text.empty() ? area_from_lon_lat(coordinates, crs) : area_from_projected(coordinates);
    } catch (const nlohmann::json::exception&) {
        return Refusal{"geometry", "", "the outline does not read", "give a GeoJSON Polygon or MultiPolygon"};
    }
}

GroundMap::GroundMap(const Season& season) {
    if (!season.harbour.epsg) return;
    const auto crs = Crs::from_epsg(static_cast<int>(*season.harbour.epsg));
    if (!crs) return;
    crs_ = *crs;
    for (const auto& cell : season.cells.rows()) {
        const auto area = area_from_text(cell.geometry, cell.crs, *crs_);
        if (!area) continue;
        parts_.emplace(cell.id, *area);
        ground_of_.emplace(cell.id, cell.ground);
        if (cell.kind == "exclusion")
            exclusions_of_[cell.ground].push_back(*area);
        else
            cells_of_[cell.ground].push_back(cell.id);
    }
    for (const auto& ground : season.grounds.rows()) {
        const auto area = area_from_text(ground.geometry, ground.crs, *crs_);
        if (area) open_grounds_.emplace(ground.id, without(*area, exclusions_of_[ground.id]));
    }
}

const Area* GroundMap::open_ground(const Id& ground) const {
    const auto place = open_grounds_.find(ground);
    return place == open_grounds_.end() ? nullptr : &place->second;
}

const Area* GroundMap::cell(const Id& cell) const {
    const auto place = parts_.find(cell);
    return place == parts_.end() ? nullptr : &place->second;
}

Area GroundMap::open_cell(const Id& id) const {
    const Area* whole = cell(id);
    if (whole == nullptr) return {};
    const auto exclusions = exclusions_of_.find(ground_of_.at(id));
    return exclusions == exclusions_of_.end() ? *whole : without(*whole, exclusions->second);
}

std::optional<EastNorth> GroundMap::place_of(const ReleaseView& release) const {
    if (!crs_ || !release.lat || !release.lon) return std::nullopt;
    const auto place = crs_->project(LonLat{*release.lat, *release.lon});
    if (!is_known(place)) return std::nullopt;
    return place;
}

Id GroundMap::cell_holding(const Id& ground, EastNorth place) const {
    const auto cells = cells_of_.find(ground);
    if (cells == cells_of_.end()) return {};
    for (const auto& id : cells->second) {
        if (contains(parts_.at(id), place)) return id;
    }
    return {};
}

Id GroundMap::cell_at(const ReleaseView& release) const {
    const auto place = cells_of_.contains(release.ground) ? place_of(release) : std::nullopt;
    return place ? cell_holding(release.ground, *place) : Id{};
}

}  // namespace spoilbook
