// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>

#include "model/answer/spot.h"
#include "model/place/track_reading.h"
#include "model/record/trip.h"

namespace spoilbook {

/// The way to a cell from where the hopper is, over the ellipsoid.
struct CellWay {
    std::string cell;
    double course_deg = 0;  ///< true
    double distance_m = 0;  ///< to the cell's place farthest from any edge
};

/// Where the hopper of a trip under way is by the receiver's newest fix. For the record, not for navigation.
struct HopperNow {
    LonLat place;
    Spot spot;            ///< to the trip's ground, else to the nearest
    bool astern = false;  ///< one line-length back on the track; else where the receiver is
    std::string why_not;  ///< towed astern and still the receiver's own place: why
    std::optional<CellWay> to_cell;
};

/// `fixes` in order of time, the newest last; `receiver_u_m` its standard uncertainty (68 %); `receiver_on`
/// (tug, barge) where the trip does not say. u = sqrt(u_rx² + (line sin 15° / 1.96)²) astern; where the track
/// does not reach back one line-length yet the whole line counts as uncertainty. `cell`: the one she is bound
/// for; nil: none. Nothing without a fix or without a map.
std::optional<HopperNow> hopper_now(const Season& season, const GroundMap& map, const Trip& trip,
                                    std::span<const ReceiverFix> fixes, double receiver_u_m,
                                    const std::string& receiver_on, const Id& cell);

}  // namespace spoilbook
