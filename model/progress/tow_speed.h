// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/ledger.h"
#include "model/progress/positioning.h"

namespace spoilbook {

/// What the log shows of the way that is made good: the straight way from the station at which a load was
/// dug to where its doors opened, over the time from casting off, and home again until alongside.
struct TowSpeed {
    Spread out_km_h, home_km_h;

    /// Minutes that each km of a longer haul (one way) adds to a round trip, of the medians.
    [[nodiscard]] double minutes_a_km() const { return 60 / out_km_h.median + 60 / home_km_h.median; }
};

/// Of the newest 100 trips back by `as_at` that log their times and their position, and whose load names a
/// station with its own. Casting off, waiting and bends are within the time, so a longer haul comes out
/// rather too long than too short. Nothing where no trip does. Common practice, no source.
std::optional<TowSpeed> tow_speed(const Ledger& ledger, Instant as_at);

}  // namespace spoilbook
