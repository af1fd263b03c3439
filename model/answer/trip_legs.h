// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "model/place/track_reading.h"
#include "model/record/trip.h"

namespace spoilbook {

/// A part of a trip along its track. Distances over the ellipsoid, m; speeds through fixes at least 10 s
/// apart, so that a receiver's jitter is not taken for way made. Common practice, no source.
struct TripLeg {
    std::string_view leg;  ///< out, release, back
    Instant from, to;
    std::size_t fixes = 0;
    std::optional<double> way_m;       ///< along the track; nothing with fewer than two fixes
    std::optional<double> straight_m;  ///< from its first fix to its last
    std::optional<double> mean_speed_kn, max_speed_kn;
    std::optional<double> course_deg;  ///< true, from its first fix to its last; nothing under 10 m apart
    double longest_gap_s = 0;          ///< between two fixes, and from the leg's own ends to them
};

/// Out from casting off to doors open, the release, and back to alongside; a leg without both its times is
/// left out. Fixes in order of time.
std::vector<TripLeg> trip_legs(const Trip& trip, std::optional<Instant> opened, std::optional<Instant> shut,
                               std::span<const ReceiverFix> fixes);

}  // namespace spoilbook
