// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <cmath>

#include "model/folder/map_ground.h"
#include "model/folder/season_view.h"

namespace spoilbook {

namespace {

/// Releases with a logged cell and a position, of trips.csv and releases.csv, waiting to be projected at
/// once.
struct LoggedPlace {
    std::string where;
    std::string of;
    Id cell;
};

template <class R>
void gather(const Sight<R>& sight, std::string R::*label, std::vector<LoggedPlace>& places,
            std::vector<LonLat>& positions) {
    for (const Seen<R>& seen : sight.all()) {
        const R& record = seen.record;
        if (!seen.fresh() || record.cell.is_nil() || !record.lat || !record.lon) continue;
        places.push_back({sight.place(seen), record.*label, record.cell});
        positions.push_back({*record.lat, *record.lon});
    }
}

void note_cells(const MatchBoard& board, const SeasonView& season, const MapGround& map, NoteDown& notes) {
    std::vector<LoggedPlace> places;
    std::vector<LonLat> positions;
    gather(season.trips, &Trip::trip, places, positions);
    gather(season.releases, &Release::release, places, positions);
    if (places.empty()) return;
    std::unordered_map<Id, Area> areas;
    const Sight<Cell> cells(board);
    for (const auto& seen : cells.all()) {
        if (seen.record.geometry.empty()) continue;
        if (auto area = area_of(seen.record.geometry, seen.record.crs, map))
            areas.emplace(seen.record.id, *area);
    }
    const auto on_map = map.crs->project(positions);
    for (std::size_t i = 0; i < places.size(); ++i) {
        const auto area = areas.find(places[i].cell);
        if (area == areas.end() || !is_known(on_map[i]) || contains(area->second, on_map[i])) continue;
        const auto* cell = cells.find(places[i].cell);
        notes.push_back(
            {places[i].where,
             fmt::format("{} is logged in cell {}, its position is {:.0f} m outside", places[i].of,
                         cell->record.cell, std::abs(signed_distance_m(area->second, on_map[i])))});
    }
}

/// One note for the book: areas and volumes go with the square of the scale.
void note_scale(const SeasonView& season, const MapGround& map, NoteDown& notes) {
    constexpr double most_off = 0.0005;
    for (const auto& seen : season.claims.all()) {
        if (!seen.fresh() || seen.record.geometry.empty()) continue;
        const auto area = area_of(seen.record.geometry, seen.record.crs, map);
        if (!area || area->parts.empty()) continue;
        const EastNorth corner = area->parts.front().rings.front().points.front();
        const double scale = map.crs->scale_factor(corner);
        if (!std::isfinite(scale) || std::abs(scale - 1) <= most_off) continue;
        notes.push_back(
            {season.claims.place(seen),
             fmt::format("the scale of {} is off by {:+.3f} % at claim {}: areas and volumes by twice "
                         "that",
                         map.name(), (scale - 1) * 100, seen.record.claim)});
        return;
    }
}

/// One note for the book: every position in latitude and longitude may be off by it.
void note_datum(const SeasonView& season, const MapGround& map, NoteDown& notes) {
    if (map.crs->datum_note().empty()) return;
    for (const auto& seen : season.claims.all()) {
        if (!seen.fresh()) continue;
        notes.push_back({season.claims.place(seen), map.crs->datum_note()});
        return;
    }
}

}  // namespace

void note_places(const MatchBoard& board, const SeasonView& season, NoteDown& notes) {
    MapGround map{board.contents.epsg, std::nullopt};
    if (!map.epsg) return;
    if (auto crs = Crs::from_epsg(*map.epsg)) map.crs = *crs;
    if (!map.crs) return;
    note_cells(board, season, map, notes);
    note_scale(season, map, notes);
    note_datum(season, map, notes);
}

}  // namespace spoilbook
