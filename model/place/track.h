// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <span>

#include "model/place/polygon.h"
#include "model/unit/checked.h"
#include "model/unit/instant.h"

namespace spoilbook {

/// Where the receiver was, when.
struct Fix {
    Instant at;
    EastNorth place;
};

/// Where the receiver was at an instant: on the straight line between the fixes before and after it, evenly
/// in time; a fix's own place at its own instant. REQUIRES fixes in order of time. Refused (code "track",
/// where empty) with no fixes, before the first or after the last, and where the two fixes lie more than
/// `longest_gap_s` apart. Common practice, no source.
Checked<EastNorth> place_on_track(std::span<const Fix> track, Instant at, double longest_gap_s);

/// A hopper's place with its standard uncertainty (68 %), m.
struct HopperPlace {
    EastNorth place;
    double u_m = 0;
};

/// Where the hopper of a barge towed astern was at an instant: one line-length back on the track, which is
/// the last place, going back in time, that lies `line_m` from the receiver in a straight line (path length
/// would count a drifting receiver's jitter as way made). u = sqrt(receiver_u² + (line sin 15° / 1.96)²):
/// the barge sheers up to 15° to either side (95 %). Line and uncertainty 0 m or more; map metres are taken
/// as metres. Refused as place_on_track() is, at the instant and at every gap gone back over, and where the
/// track does not reach back that far. Common practice, no source.
Checked<HopperPlace> hopper_astern(std::span<const Fix> track, Instant at, double line_m, double receiver_u_m,
                                   double longest_gap_s);

/// The least value anywhere on a way of straight legs, to 1 cm, of a distance: any function of the place that
/// changes by no more than a metre a metre. One place gives its own value, none gives NaN, as does a place
/// that is not known.
double least_along(std::span<const EastNorth> way, const std::function<double(EastNorth)>& distance_m);

/// The least signed distance anywhere on a way of straight legs, to 1 cm: whether a whole release stayed
/// inside. One place gives its own distance, none gives NaN, as does a place that is not known.
double least_signed_distance_m(const Area& area, std::span<const EastNorth> way);

}  // namespace spoilbook
