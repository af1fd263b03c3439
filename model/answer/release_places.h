// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/answer/trip_tracks.h"
#include "model/consent/ledger.h"
#include "model/place/verdict.h"

namespace spoilbook {

/// Where one release was, held against the ground that its trip names, holes and exclusions out, whether or
/// not a condition asks.
struct ReleasePlace {
    const ReleaseView* release = nullptr;
    PlaceVerdict verdict = PlaceVerdict::cannot_tell;
    std::optional<EastNorth> place;    ///< the hopper's, where the doors opened
    bool by_track = false;             ///< no position was logged: the track has it
    bool left_ground = false;          ///< by the track, with the doors open
    std::optional<double> distance_m;  ///< to the boundary on the map, positive inside
    double position_u_m = 0;           ///< standard uncertainty that was judged with
    bool u_assumed = false;            ///< none was recorded
    Id ground, cell;                   ///< cell as logged, else by position
    std::string why;                   ///< for cannot_tell: what is missing, in words
};

/// Every release whose release end is ≤ as_at, in order of time. With `tracks`: a release without a logged
/// position is placed on its trip's track; one logged by the receiver of a tug that towed astern is moved to
/// the hopper, one line-length back on the track, u = sqrt(u_rx² + (line sin 15° / 1.96)²); and it is told
/// whether she left the ground with the doors open (the track's least distance -2 u or less).
std::vector<ReleasePlace> release_places(const Ledger& ledger, Instant as_at, TripTracks* tracks = nullptr);

}  // namespace spoilbook
