// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>

#include "model/turbidity/trigger.h"

namespace spoilbook {

/// The statistic that a trigger names, along one site's own readings, under the version in force at each:
/// of the differences from the control where it compares pairs, else of the readings.
class SiteStatistic {
 public:
    /// Trigger and series must outlive it. REQUIRES that there is a series of the site.
    SiteStatistic(const Trigger& trigger, std::string site, SeriesOf series_of)
        : trigger_(trigger), site_(std::move(site)), series_of_(std::move(series_of)) {}

    /// Nothing where it cannot be told, or where no version holds. REQUIRES t not before the last one.
    std::optional<double> at(Instant t);

 private:
    struct Walk {
        SiteSeries pairs;
        std::optional<StatisticCursor> cursor;
    };
    StatisticCursor& cursor_of(std::size_t version);

    const Trigger& trigger_;
    std::string site_;
    SeriesOf series_of_;
    std::map<std::size_t, Walk> walks_;  ///< by version
};

}  // namespace spoilbook
