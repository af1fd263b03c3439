// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "model/unit/instant.h"

namespace spoilbook {

/// When the work goes on that a condition watches.
class WorkingTime {
 public:
    /// Periods in any order; they may overlap.
    explicit WorkingTime(std::vector<Period> periods);

    /// Inside a period, or less than `plus_ms` after its end.
    [[nodiscard]] bool goes_on(Instant at, std::int64_t plus_ms) const;

 private:
    std::vector<Period> periods_;  ///< in order, apart from each other
};

}  // namespace spoilbook
