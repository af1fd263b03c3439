// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/track.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "model/place/track_refused.h"

namespace spoilbook {
namespace {

double seconds(std::int64_t ms) {
    return static_cast<double>(ms) / static_cast<double>(ms_per_second);
}

EastNorth between(EastNorth a, EastNorth b, double share) {
    return {a.easting_m + share * (b.easting_m - a.easting_m),
            a.northing_m + share * (b.northing_m - a.northing_m)};
}

double apart_m(EastNorth a, EastNorth b) {
    return std::hypot(a.easting_m - b.easting_m, a.northing_m - b.northing_m);
}

Refusal gap_refused(const Fix& before, const Fix& after, double longest_gap_s) {
    return track_refused(fmt::format("the track has a gap of {} s there, longer than {} s",
                                     seconds(after.at - before.at), longest_gap_s),
                         "give the position from the deck log");
}

/// The last place on the leg from `older` (beyond the reach) to `newer` (within it) at just that distance.
EastNorth where_reached(EastNorth older, EastNorth newer, EastNorth from, double reach_m) {
    double beyond = 0, within = 1;
    for (int i = 0; i < 60; ++i) {
        const double middle = (beyond + within) / 2;
        (apart_m(between(older, newer, middle), from) > reach_m ? beyond : within) = middle;
    }
    return between(older, newer, within);
}

}  // namespace

Checked<EastNorth> place_on_track(std::span<const Fix> track, Instant at, double longest_gap_s) {
    const std::string mend = "give the position from the deck log";
    if (track.empty()) return track_refused("the track has no fixes", mend);
    if (at < track.front().at) return track_refused("the track begins later than that", mend);
    if (at > track.back().at) return track_refused("the track ends earlier than that", mend);
    const auto after = std::ranges::lower_bound(track, at, {}, &Fix::at);
    if (after->at == at) return after->place;
    const Fix& before = *std::prev(after);
    if (seconds(after->at - before.at) > longest_gap_s) return gap_refused(before, *after, longest_gap_s);
    return between(before.place, after->place, seconds(at - before.at) / seconds(after->at - before.at));
}

Checked<HopperPlace> hopper_astern(std::span<const Fix> track, Instant at, double line_m, double receiver_u_m,
                                   double longest_gap_s) {
    const Checked<EastNorth> receiver = place_on_track(track, at, longest_gap_s);
    if (!receiver) return receiver.refusals();
    constexpr double sine_of_15_degrees = 0.25881904510252074;
    const double u_m = std::hypot(receiver_u_m, line_m * sine_of_15_degrees / 1.96);
    if (line_m == 0) return HopperPlace{*receiver, u_m};

    Fix newer{at, *receiver};
    const auto first_not_before = std::ranges::lower_bound(track, at, {}, &Fix::at);
    for (auto i = std::distance(track.begin(), first_not_before); i > 0; --i) {
        const Fix& older = track[static_cast<std::size_t>(i - 1)];
        if (seconds(newer.at - older.at) > longest_gap_s) return gap_refused(older, newer, longest_gap_s);
        if (apart_m(older.place, *receiver) >= line_m) {
            return HopperPlace{where_reached(older.place, newer.place, *receiver, line_m), u_m};
        }
        newer = older;
    }
    return track_refused(fmt::format("the track does not reach back one tow line of {} m", line_m),
                         "give the hopper's position, or more of the track");
}

}  // namespace spoilbook
