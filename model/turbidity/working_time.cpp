// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/working_time.h"

#include <algorithm>

namespace spoilbook {

WorkingTime::WorkingTime(std::vector<Period> periods) {
    std::sort(periods.begin(), periods.end());
    for (const Period& period : periods) {
        if (!periods_.empty() && period.from <= periods_.back().to)
            periods_.back().to = std::max(periods_.back().to, period.to);
        else
            periods_.push_back(period);
    }
}

bool WorkingTime::goes_on(Instant at, std::int64_t plus_ms) const {
    const auto after = std::partition_point(periods_.begin(), periods_.end(),
                                            [&](const Period& period) { return period.from <= at; });
    return after != periods_.begin() && at < std::prev(after)->to + plus_ms;
}

}  // namespace spoilbook
