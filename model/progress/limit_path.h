// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "model/consent/limit.h"

namespace spoilbook {

/// One draw of the days to come.
struct DaysDrawn {
    std::vector<int> log_day;  ///< the day of the log that each is like; −1: nothing is done on it
    double factor = 1;         ///< by which the work of every day is more or less
    double error = 0;          ///< standard normal, by which amounts are off, in their own uncertainty
};

/// A limit laid out over the days to come: what of the past still counts at the end of each, since when the
/// days to come do, and the limit itself. Made once, walked for each draw.
class LimitPath {
 public:
    /// `evenings`: the last instant of each day to come, in order. `log_evenings`: those of the days of the
    /// log that days to come are drawn from.
    LimitPath(const Ledger& ledger, const LimitState& state, const std::vector<Instant>& evenings,
              const std::vector<Instant>& log_evenings);

    /// The limit can be forecast: an at_most whose total does not grow with it.
    [[nodiscard]] bool known() const { return known_; }
    /// Number of the first day to come at whose end more than the limit would be used; −1: none of them.
    [[nodiscard]] int first_over(const DaysDrawn& drawn) const;

 private:
    struct Stand {
        double past = 0;                  ///< of what was counted by the as-at, what still is
        std::size_t first = 0, last = 0;  ///< [first, last): the days to come that its window holds
        std::optional<double> limit;
    };

    bool known_ = false;
    bool of_days_ = false;        ///< counts days with work: no day has more than one
    double relative_u_ = 0;       ///< of what is used
    std::vector<double> by_day_;  ///< what counted on each day of the log
    std::vector<Stand> stands_;   ///< by day to come
};

}  // namespace spoilbook
