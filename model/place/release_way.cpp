// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/release_way.h"

#include <fmt/format.h>

#include <algorithm>

namespace spoilbook {

bool towed_behind_receiver(const Trip& trip) {
    return trip.tow == "astern" && trip.receiver_on == "tug";
}

Checked<HopperPlace> hopper_on_track(const Trip& trip, std::span<const Fix> track, Instant at,
                                     double receiver_u_m, double longest_gap_s) {
    if (!towed_behind_receiver(trip)) {
        const auto place = place_on_track(track, at, longest_gap_s);
        if (!place) return place.refusals();
        return HopperPlace{*place, receiver_u_m};
    }
    if (!trip.tow_line_m)
        return Refusal{"track", "", "the length of the tow line is not recorded", "log tow_line_m"};
    return hopper_astern(track, at, *trip.tow_line_m, receiver_u_m, longest_gap_s);
}

Checked<std::vector<EastNorth>> hopper_way(const ReleaseView& release, std::span<const Fix> track,
                                           double longest_gap_s) {
    const auto shut = release.shut ? release.shut : release.ended;
    if (!release.opened || !shut)
        return Refusal{"track", "", "when the doors were open is not recorded", "log both times"};
    std::vector<Instant> times{*release.opened};
    auto fix = std::ranges::upper_bound(track, *release.opened, {}, &Fix::at);
    for (; fix != track.end() && fix->at < *shut; ++fix) {
        if (fix != track.begin() && static_cast<double>(fix->at - std::prev(fix)->at) > longest_gap_s * 1000)
            return Refusal{"track", "", fmt::format("the track has a gap longer than {} s", longest_gap_s),
                           "give the position from the deck log"};
        times.push_back(fix->at);
    }
    if (*shut > *release.opened) times.push_back(*shut);
    std::vector<EastNorth> way;
    for (const Instant at : times) {
        const auto place = hopper_on_track(*release.trip, track, at, 0, longest_gap_s);
        if (!place) return place.refusals();
        way.push_back(place->place);
    }
    return way;
}

}  // namespace spoilbook
