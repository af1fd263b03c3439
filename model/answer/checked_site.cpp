// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/checked_site.h"

#include <algorithm>

#include "model/folder/match_material.h"

namespace spoilbook {

namespace {

Thresholds own_thresholds(const Site& site) {
    Thresholds set;
    set.range_low = site.range_low;
    set.range_high = site.range_high;
    set.spike = site.spike;
    set.rate_per_min = site.rate_per_min;
    set.flat_min = site.flat_min;
    return set;
}

}  // namespace

std::vector<ThresholdSpan> thresholds_of(const Book& book, const Site& site) {
    std::vector<ThresholdSpan> spans{{.thresholds = own_thresholds(site)}};
    for (const Row& row : book.rows(definition<SiteCheck>().kind())) {
        const auto check = definition<SiteCheck>().read(row);
        if (check.site != site.id) continue;
        ThresholdSpan span;
        if (check.from) span.from = *check.from;
        if (check.to) span.to = *check.to;
        span.thresholds = {check.range_low,     check.range_high,    check.suspect_low,  check.suspect_high,
                           check.spike,         check.spike_fail,    check.rate_per_min, check.flat_min,
                           check.flat_fail_min, check.flat_tolerance};
        spans.push_back(span);
    }
    return spans;
}

std::vector<Overrule> overrule_rows_of(const Book& book, const Site& site) {
    std::vector<Overrule> overrules;
    for (const Row& row : book.rows(definition<Overrule>().kind())) {
        auto said = definition<Overrule>().read(row);
        if (said.site == site.id && said.from && said.flag.size() == 1) overrules.push_back(std::move(said));
    }
    return overrules;
}

std::vector<FlagOverrule> overrules_of(const Book& book, const Site& site) {
    std::vector<FlagOverrule> flags;
    for (const auto& said : overrule_rows_of(book, site))
        flags.push_back(
            {*said.from, said.to.value_or(*said.from), static_cast<Flag>(said.flag.front() - '0')});
    return flags;
}

SiteSeries checked_site(const Book& book, const Site& site, Instant as_at) {
    auto readings = held_readings(book, site.id);
    const auto later = std::partition_point(readings.begin(), readings.end(),
                                            [&](const auto& reading) { return reading.time <= as_at; });
    readings.erase(later, readings.end());
    return checked_series(std::move(readings), thresholds_of(book, site), overrules_of(book, site),
                          site.interval_min);
}

}  // namespace spoilbook
