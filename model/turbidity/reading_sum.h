// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/turbidity/site_series.h"

namespace spoilbook {

/// Readings of a stretch of time in a few numbers, in the unit of the site.
struct ReadingSum {
    std::size_t readings = 0;                          ///< rows, missing ones too
    std::size_t counted = 0;                           ///< flag 1 or 2
    std::size_t suspect = 0, failed = 0, missing = 0;  ///< flag 3, 4, 9
    std::optional<double> raw_low, raw_high;           ///< of every value, as it came
    std::optional<double> low, middle, high;           ///< least, median, greatest of those that count

    bool operator==(const ReadingSum&) const = default;
};

/// Of readings [first, last) of the series.
ReadingSum sum_of(const SiteSeries& series, std::size_t first, std::size_t last);

/// Of several stretches as one. All but `middle` are exact; it is the median of their medians.
ReadingSum sum_of(const std::vector<ReadingSum>& parts);

/// The first reading at or after the instant.
std::size_t first_from(const SiteSeries& series, Instant at);

}  // namespace spoilbook
