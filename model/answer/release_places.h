// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/ledger.h"
#include "model/place/verdict.h"

namespace spoilbook {

/// Where one release was, held against the ground that its trip names, holes and exclusions out, whether or
/// not a condition asks.
struct ReleasePlace {
    const ReleaseView* release = nullptr;
    PlaceVerdict verdict = PlaceVerdict::cannot_tell;
    std::optional<double> distance_m;  ///< to the boundary on the map, positive inside
    double position_u_m = 0;           ///< standard uncertainty that was judged with
    bool u_assumed = false;            ///< none was recorded
    Id ground, cell;                   ///< cell as logged, else by position
    std::string why;                   ///< for cannot_tell: what is missing, in words
};

/// Every release whose release end is ≤ as_at, in order of time.
std::vector<ReleasePlace> release_places(const Ledger& ledger, Instant as_at);

}  // namespace spoilbook
