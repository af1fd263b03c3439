// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "model/place/point.h"
#include "model/unit/instant.h"

namespace spoilbook {

/// Where a receiver said it was, when. WGS 84.
struct ReceiverFix {
    Instant at;
    LonLat place;

    bool operator==(const ReceiverFix&) const = default;
};

/// A line of a track's file that was left out, or taken with a doubt.
struct TrackFault {
    std::size_t line = 0;  ///< from 1
    std::string what;

    bool operator==(const TrackFault&) const = default;
};

/// What a receiver's file holds.
struct TrackReading {
    static constexpr std::size_t most_faults_kept = 100;
    static constexpr std::size_t most_fixes = 20'000'000;  ///< later ones are left out, with a fault

    std::vector<ReceiverFix> fixes;  ///< in order of time, one an instant (the first that was read)
    std::size_t bad_lines = 0;       ///< all of them
    std::vector<TrackFault> faults;  ///< the first of them
    std::size_t without_fix = 0;     ///< sentences in which the receiver itself says that it has no fix
    std::size_t out_of_order = 0;    ///< fixes that stood after a later one

    void fault(std::size_t line, std::string what);
    /// Puts the fixes in order of time and takes out those of an instant that has one already.
    void put_in_order();
};

}  // namespace spoilbook
