// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/hopper_now.h"

#include <cmath>

#include "model/place/haul_distance.h"
#include "model/place/release_way.h"

namespace spoilbook {

namespace {

/// More than any line reaches back, with room for a slow tow.
constexpr std::int64_t looked_back_ms = 30 * ms_per_minute;

std::vector<Fix> newest_on_map(const Crs& crs, std::span<const ReceiverFix> fixes) {
    std::size_t from = fixes.size();
    while (from > 0 && fixes.back().at - fixes[from - 1].at <= looked_back_ms)
        --from;
    std::vector<Fix> track;
    for (const ReceiverFix& fix : fixes.subspan(from)) {
        const EastNorth place = crs.project(fix.place);
        if (is_known(place)) track.push_back({fix.at, place});
    }
    return track;
}

HopperPlace place_hopper(const Trip& trip, std::span<const Fix> track, double receiver_u_m, HopperNow& now) {
    const HopperPlace receiver{track.back().place, receiver_u_m};
    if (!towed_behind_receiver(trip)) return receiver;
    const auto hopper = hopper_on_track(trip, track, track.back().at, receiver_u_m, usual_track_gap_s);
    if (hopper) {
        now.astern = true;
        return *hopper;
    }
    now.why_not = hopper.refusals().front().what;
    return {receiver.place, std::hypot(receiver_u_m, trip.tow_line_m.value_or(0))};
}

std::optional<CellWay> way_to(const Season& season, const GroundMap& map, LonLat from, const Id& id) {
    const Cell* cell = season.cells.find(id);
    const Area area = cell == nullptr ? Area{} : map.open_cell(id);
    if (area.parts.empty()) return std::nullopt;
    const LonLat to = map.crs()->unproject(farthest_inside(area));
    return CellWay{cell->cell, course_deg(from, to), haul_distance_m(from, to)};
}

}  // namespace

std::optional<HopperNow> hopper_now(const Season& season, const GroundMap& map, const Trip& trip,
                                    std::span<const ReceiverFix> fixes, double receiver_u_m,
                                    const std::string& receiver_on, const Id& cell) {
    if (!map.crs() || fixes.empty()) return std::nullopt;
    const auto track = newest_on_map(*map.crs(), fixes);
    if (track.empty() || track.back().at != fixes.back().at) return std::nullopt;
    Trip as_towed = trip;
    if (as_towed.receiver_on.empty()) as_towed.receiver_on = receiver_on;
    HopperNow now;
    const HopperPlace hopper = place_hopper(as_towed, track, receiver_u_m, now);
    now.place = map.crs()->unproject(hopper.place);
    now.spot = spot_of(season, map, now.place, hopper.u_m, trip.ground);
    now.to_cell = way_to(season, map, now.place, cell);
    return now;
}

}  // namespace spoilbook
