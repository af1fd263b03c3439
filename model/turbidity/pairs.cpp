// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/pairs.h"

#include <cstdlib>

#include "model/unit/minutes.h"

namespace spoilbook {

namespace {

std::vector<LoggerReading> good_readings(const SiteSeries& series) {
    std::vector<LoggerReading> good;
    for (std::size_t i = 0; i < series.readings.size(); ++i) {
        if (counts(series.flags[i])) good.push_back(series.readings[i]);
    }
    return good;
}

}  // namespace

SiteSeries paired_differences(const SiteSeries& site, const SiteSeries& control, double lag_min,
                              std::optional<double> tolerance_min) {
    const auto others = good_readings(control);
    const std::int64_t lag = ms_of_minutes(lag_min);
    const std::int64_t tolerance = ms_of_minutes(tolerance_min.value_or(control.interval_min / 2));
    SiteSeries pairs;
    pairs.interval_min = site.interval_min;
    pairs.readings.reserve(site.readings.size());
    std::size_t next = 0;
    for (std::size_t i = 0; i < site.readings.size(); ++i) {
        const Instant wanted = site.readings[i].time - lag;
        LoggerReading pair{site.readings[i].time, std::nullopt};
        const auto away = [&](std::size_t k) { return std::abs(others[k].time - wanted); };
        while (next + 1 < others.size() && others[next + 1].time <= wanted)
            ++next;
        const bool later = next + 1 < others.size() && away(next + 1) < away(next);
        const std::size_t nearest = later ? next + 1 : next;
        if (nearest < others.size() && counts(site.flags[i]) && away(nearest) <= tolerance)
            pair.value = *site.readings[i].value - *others[nearest].value;
        pairs.readings.push_back(pair);
        pairs.flags.push_back(pair.value ? Flag::pass : Flag::missing);
    }
    pairs.verdicts.resize(pairs.readings.size());
    return pairs;
}

}  // namespace spoilbook
