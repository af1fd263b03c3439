// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "model/record/season.h"

namespace spoilbook {

/// The levels of tide.csv, m relative to the book's vertical datum, on straight lines between rows. Where two
/// rows lie more than `longest_gap_ms` apart the level between them is not known, nor before the first and
/// after the last. Rows without a time or a level are passed over; of rows of one time the last counts.
class TideLevels {
 public:
    static constexpr std::int64_t longest_gap_ms = 3 * ms_per_hour;

    explicit TideLevels(const Shelf<Tide>& rows);

    [[nodiscard]] std::optional<double> at(Instant time) const;
    /// Every instant in the span at which the level may come to one of `levels_m` or leave it, or be known or
    /// not known for the first time: on the last millisecond before and the first after, in order.
    [[nodiscard]] std::vector<Instant> turns(Period span, const std::vector<double>& levels_m) const;

 private:
    struct Level {
        Instant time;
        double level_m = 0;
    };
    std::vector<Level> levels_;
};

}  // namespace spoilbook
