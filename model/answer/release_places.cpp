// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/release_places.h"

#include <algorithm>
#include <cmath>

namespace spoilbook {

namespace {

/// With the receiver on a tug that tows astern, the hopper lies one line-length off in a direction that only
/// a track can tell: until there is one, the line counts as uncertainty.
double judged_u(const ReleaseView& release) {
    const double own = release.position_u_m.value_or(usual_position_u_m);
    const Trip& trip = *release.trip;
    const bool away = trip.tow == "astern" && trip.receiver_on == "tug" && trip.tow_line_m;
    return away ? std::hypot(own, *trip.tow_line_m) : own;
}

ReleasePlace place_of(const Ledger& ledger, const ReleaseView& release) {
    ReleasePlace place;
    place.release = &release;
    place.ground = release.ground;
    place.cell = release.cell ? release.cell : ledger.grounds().cell_at(release);
    place.position_u_m = judged_u(release);
    place.u_assumed = !release.position_u_m;
    const auto at = ledger.grounds().place_of(release);
    const Area* ground = ledger.grounds().open_ground(release.ground);
    if (!at)
        place.why = "no position";
    else if (ground == nullptr)
        place.why = "no ground named";
    else {
        place.distance_m = signed_distance_m(*ground, *at);
        place.verdict = verdict(*place.distance_m, place.position_u_m);
        if (place.verdict == PlaceVerdict::cannot_tell)
            place.why = "nearer to the boundary than the position is sure";
    }
    return place;
}

}  // namespace

std::vector<ReleasePlace> release_places(const Ledger& ledger, Instant as_at) {
    std::vector<ReleasePlace> places;
    for (const auto& release : ledger.all_releases()) {
        if (release.ended && *release.ended <= as_at && release.counts)
            places.push_back(place_of(ledger, release));
    }
    std::stable_sort(places.begin(), places.end(), [](const ReleasePlace& a, const ReleasePlace& b) {
        return *a.release->ended < *b.release->ended;
    });
    return places;
}

}  // namespace spoilbook
