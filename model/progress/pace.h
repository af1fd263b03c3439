// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/progress/positioning.h"

namespace spoilbook {

/// Who holds up the loads.
enum class Governs { dredger, tugs, barges };

std::string text(Governs governs);

/// The newest loads, and the newest trips, that a pace is taken from: some weeks of work.
inline constexpr std::size_t pace_of_newest = 100;

/// How long the turns of a load take, in minutes, over the newest loads of the log, and what that would
/// allow.
struct Pace {
    std::size_t loads = 0;         ///< looked at
    std::optional<Spread> fill;    ///< loading start to end, within shifts; delays but "shifting station" out
    std::optional<Spread> change;  ///< full to the next one begun, in one shift; but "barge change" out
    std::optional<Spread> round_trip;  ///< cast off to alongside again
    std::size_t tugs = 0, barges = 0;  ///< different ones that carried these loads
    /// Loads an hour that each alone would allow; nothing where the log does not tell.
    std::optional<double> by_dredger, by_tugs, by_barges;
    std::optional<double> measured;  ///< loads an hour of the shifts in which these were filled

    /// The least of the three, and whose it is; nothing unless all three are known.
    [[nodiscard]] std::optional<double> least() const;
    [[nodiscard]] std::optional<Governs> governs() const;
};

/// Dredger 60/(fill + change), tugs n·60/round trip, barges n·60/(fill + change + round trip), of medians.
/// Common practice, no source.
Pace pace(const Season& season, const SeasonHours& hours, Instant as_at);

/// The same from minutes that are there: fill, change and round trip > 0 in sum.
void allow(Pace& pace, double fill_min, double change_min, double round_trip_min);

}  // namespace spoilbook
