// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>

#include "model/turbidity/trigger.h"

namespace spoilbook {

/// The statistic that a trigger names, along one site's own readings, under the version in force at each.
class SiteStatistic {
 public:
    /// Both must outlive it.
    SiteStatistic(const Trigger& trigger, const SiteSeries& series) : trigger_(trigger), series_(series) {}

    /// Nothing where it cannot be told, or where no version holds. REQUIRES t not before the last one.
    std::optional<double> at(Instant t);

 private:
    const Trigger& trigger_;
    const SiteSeries& series_;
    std::map<std::size_t, StatisticCursor> cursors_;  ///< by version
};

}  // namespace spoilbook
