// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/turbidity/rolling_statistic.h"
#include "model/turbidity/site_series.h"

namespace spoilbook {

/// A statistic at one instant, of the readings with flag 1 or 2 in its window.
struct StatisticAt {
    std::optional<double> value;  ///< nothing where no reading counts
    double complete = 0;  ///< readings that count over the number that the nominal interval would give
};

/// A share that reaches what is asked for; rounding of a share such as 27/36 does not decide.
bool complete_enough(const StatisticAt& statistic, double min_complete);

/// Walks along one site's series. A window (t − over_min, t]; over_min 0: the reading at t itself, of the
/// control (`of_control`) the newest within its interval, for two loggers seldom read at the same moment.
/// Without a known interval nothing is complete.
class StatisticCursor {
 public:
    /// The series must outlive the cursor.
    StatisticCursor(const SiteSeries& series, const StatisticRule& rule, double over_min,
                    bool of_control = false);

    /// REQUIRES t not before the last one asked for.
    StatisticAt at(Instant t);

 private:
    const SiteSeries& series_;
    RollingStatistic window_;
    std::int64_t over_ms_;
    double nominal_;  ///< readings in a whole window
    std::size_t next_ = 0;
    bool begun_ = false;
};

}  // namespace spoilbook
