// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/cell_said.h"

#include <fmt/format.h>

#include <algorithm>

#include "model/answer/spot.h"
#include "model/place/verdict.h"
#include "model/unit/shown.h"

namespace spoilbook {

namespace {

/// The record as a release, whatever kind it came in; nothing of another kind.
std::optional<ReleaseView> view_of(const Season& season, const Kind& kind, const Row& row, Trip& trip,
                                   Release& release) {
    if (kind.name == "trip") {
        trip = definition<Trip>().read(row);
        return release_of_trip(trip, season.loads.find(trip.load));
    }
    if (kind.name != "release") return std::nullopt;
    release = definition<Release>().read(row);
    if (const Trip* its = season.trips.find(release.trip)) trip = *its;
    return release_of_row(trip, season.loads.find(trip.load), release, 1);
}

bool has_cells(const Season& season, const Id& ground) {
    const auto& cells = season.cells.rows();
    return std::any_of(cells.begin(), cells.end(),
                       [&](const Cell& cell) { return cell.ground == ground && cell.kind != "exclusion"; });
}

void hold_against_cell(const GroundMap& map, const ReleaseView& release, CellSaid& said) {
    const auto place = map.place_of(release);
    const Area* area = map.cell(release.cell);
    if (!place || area == nullptr || area->parts.empty()) return;
    const double inside_m = signed_distance_m(*area, *place);
    // One that is odd is asked about as a whole: its cell is no matter.
    if (!(inside_m < 0) || inside_m < -odd_distance_m) return;
    said.outside_m = -inside_m;
    said.says = verdict(inside_m, said.position_u_m) == PlaceVerdict::outside ? CellSays::contradicts
                                                                              : CellSays::beside;
}

}  // namespace

CellSaid cell_said(const Season& season, const GroundMap& map, const Kind& kind, const Row& row) {
    Trip trip;
    Release row_of_its_own;
    CellSaid said;
    auto release = view_of(season, kind, row, trip, row_of_its_own);
    if (!release || !release->counts) return said;
    // Limits do not guess the ground: a cell counts by position only where it is written.
    const bool is_grounded = !release->ground.is_nil();
    if (!is_grounded && season.grounds.size() == 1) release->ground = season.grounds.rows().front().id;
    if (!release->ground || !has_cells(season, release->ground)) return said;
    if (const Ground* ground = season.grounds.find(release->ground)) said.ground = ground->ground;
    said.position_u_m = release->position_u_m.value_or(usual_position_u_m);
    said.has_place = release->lat && release->lon;
    if (const Cell* cell = season.cells.find(map.cell_at(*release))) said.lies_in = cell->cell;
    if (const Cell* cell = season.cells.find(release->cell)) {
        said.written = cell->cell;
        hold_against_cell(map, *release, said);
    } else if (release->row != nullptr || release->opened || release->ended) {
        said.says = is_grounded && !said.lies_in.empty() ? CellSays::by_position : CellSays::no_cell;
    }
    return said;
}

std::string cell_said_text(const CellSaid& said) {
    const std::string in = said.lies_in.empty() ? "in no cell" : "in " + said.lies_in;
    switch (said.says) {
        case CellSays::nothing:
            break;
        case CellSays::by_position:
            return fmt::format("no cell is written: limits count it {}, where its position lies", in);
        case CellSays::no_cell:
            return fmt::format("no cell is written and {}: it counts under no cell of {}",
                               !said.lies_in.empty() ? "no ground"
                               : said.has_place      ? "its position lies in none"
                                                     : "no position tells one",
                               said.ground);
        case CellSays::contradicts:
            return fmt::format("cell {} is written, but its position lies {:.0f} m outside it, {}",
                               said.written, said.outside_m, in);
        case CellSays::beside:
            return fmt::format(
                "cell {} is written; its position lies {:.0f} m outside it, and is sure to ± {:.0f} m (95 %) "
                "only",
                said.written, said.outside_m, rounded_up(2 * said.position_u_m, 0));
    }
    return {};
}

}  // namespace spoilbook
