// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "model/progress/shift_hours.h"

namespace spoilbook {

/// The step from one station to the next: spuds up to spuds down.
struct Positioning {
    const Station* from = nullptr;
    const Station* to = nullptr;
    const Shift* shift = nullptr;
    Period time;
    double minutes = 0;          ///< delays taken out
    double delayed_minutes = 0;  ///< what was taken out
};

/// Of each dredger every station that began and whose station before ended in one and the same shift. Delays
/// are taken out, but for the cause "shifting station", which is the step itself. Left out where the spuds
/// went down before they had come up. In order of time.
std::vector<Positioning> positionings(const Season& season, const SeasonHours& hours);

/// How numbers lie: quantiles of type 7 (Hyndman and Fan 1996).
struct Spread {
    std::size_t n = 0;
    double p10 = 0, median = 0, p90 = 0;
};

/// Nothing of no numbers.
std::optional<Spread> spread_of(const std::vector<double>& numbers);
std::optional<Spread> spread_of(const std::vector<Positioning>& steps);

}  // namespace spoilbook
