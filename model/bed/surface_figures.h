// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <optional>

#include "model/place/point.h"

namespace spoilbook {

/// What a bed is held against: any of the three, allowances taken in already. Levels in m, positive up.
struct SurfaceBounds {
    std::optional<double> lowest_m;     ///< no pixel lies lower
    std::optional<double> highest_m;    ///< none higher
    std::optional<double> most_rise_m;  ///< none more than this over the same place of the baseline

    [[nodiscard]] bool empty() const { return !lowest_m && !highest_m && !most_rise_m; }
};

/// The pixel that stands worst against a bound.
struct WorstPixel {
    double past_m = 0;  ///< past the bound; negative: it keeps it by so much
    double level_m = 0;
    double u_m = 0;   ///< standard, of past_m
    EastNorth place;  ///< its middle, on the book's map
};

/// How much of an area keeps bounds and how much does not, m² on the grid's map. A pixel counts by its share
/// in the area. Where it is past a bound by 2 u or more it is past it, where it keeps all by 2 u or more it
/// keeps them (without a half-width exactly on a bound keeps it); between, it cannot be told.
struct SurfaceLook {
    double area_m2 = 0;
    double surveyed_m2 = 0;
    double covered_m2 = 0;  ///< surveyed, and where a rise is judged in the baseline too
    double past_m2 = 0;
    double in_doubt_m2 = 0;
    bool has_u = true;  ///< false: no uncertainty is recorded, and nothing could be told of any pixel
    std::optional<WorstPixel> worst;

    [[nodiscard]] double not_surveyed_m2() const { return std::max(area_m2 - surveyed_m2, 0.0); }
    [[nodiscard]] double not_in_baseline_m2() const { return std::max(surveyed_m2 - covered_m2, 0.0); }
    /// The share of the area that is past a bound for sure, and that may be: past, in doubt or not surveyed.
    [[nodiscard]] double past_share() const { return past_m2 / area_m2; }
    [[nodiscard]] double possible_share() const {
        return (past_m2 + in_doubt_m2 + not_surveyed_m2() + not_in_baseline_m2()) / area_m2;
    }
};

}  // namespace spoilbook
