// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/checked_site.h"

#include <algorithm>

#include "model/folder/match_material.h"

namespace spoilbook {

namespace {

Thresholds thresholds_of(const Site& site) {
    Thresholds set;
    set.range_low = site.range_low;
    set.range_high = site.range_high;
    set.spike = site.spike;
    set.rate_per_min = site.rate_per_min;
    set.flat_min = site.flat_min;
    return set;
}

}  // namespace

SiteSeries checked_site(const Book& book, const Site& site, Instant as_at) {
    auto readings = held_readings(book, site.id);
    const auto later = std::partition_point(readings.begin(), readings.end(),
                                            [&](const auto& reading) { return reading.time <= as_at; });
    readings.erase(later, readings.end());
    return checked_series(std::move(readings), {{.thresholds = thresholds_of(site)}}, {}, site.interval_min);
}

}  // namespace spoilbook
