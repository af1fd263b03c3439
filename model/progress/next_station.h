// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "model/record/season.h"

namespace spoilbook {

/// Where the pontoon's centre would stand next: metres in the book's projected CRS, heading in degrees of
/// the grid, 0 to 360.
struct NextStation {
    double easting_m = 0;
    double northing_m = 0;
    double heading_deg = 0;
    Id claim;
    double step_m = 0;  ///< along the heading; negative: astern
};

/// One advance step further in the lane of the newest station, along its heading. The step is the last one
/// that the pontoon took in this lane (same claim, at most 10 m, within 15° of the heading either way); where
/// the lane has none, 5 m astern, as an excavator works away from what it has dug. Nothing where the newest
/// station has no place or no heading. Common practice, no source.
std::optional<NextStation> next_station(const Season& season);

}  // namespace spoilbook
