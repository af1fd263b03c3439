// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/site_series.h"

#include <algorithm>

namespace spoilbook {

namespace {

void overrule_one(SiteSeries& series, const FlagOverrule& said) {
    const auto first = std::partition_point(series.readings.begin(), series.readings.end(),
                                            [&](const auto& reading) { return reading.time < said.from; });
    for (auto it = first; it != series.readings.end() && it->time <= said.to; ++it) {
        if (it->value) series.flags[static_cast<std::size_t>(it - series.readings.begin())] = said.flag;
    }
}

}  // namespace

SiteSeries checked_series(std::vector<LoggerReading> readings, const std::vector<ThresholdSpan>& spans,
                          const std::vector<FlagOverrule>& overrules, std::optional<double> interval_min) {
    const auto earlier = [](const LoggerReading& a, const LoggerReading& b) { return a.time < b.time; };
    if (!std::is_sorted(readings.begin(), readings.end(), earlier))
        std::stable_sort(readings.begin(), readings.end(), earlier);
    SiteSeries series;
    series.readings = std::move(readings);
    if (!interval_min) interval_min = commonest_step_min(series.readings);
    series.interval_min = interval_min.value_or(0);
    series.verdicts =
        check_readings(series.readings, spans, series.interval_min > 0 ? series.interval_min : 1);
    series.flags.reserve(series.verdicts.size());
    for (const auto& verdicts : series.verdicts)
        series.flags.push_back(overall(verdicts));
    overrule(series, overrules);
    return series;
}

void overrule(SiteSeries& series, const std::vector<FlagOverrule>& overrules) {
    for (const auto& said : overrules)
        overrule_one(series, said);
}

}  // namespace spoilbook
