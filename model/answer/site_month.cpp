// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/site_month.h"

#include <algorithm>

#include "model/turbidity/sample_quantile.h"

namespace spoilbook {

namespace {

void count_readings(TurbidityWatch& watch, const SiteSeries& series, const Period& period, SiteMonth& month) {
    std::vector<double> counted;
    const auto& instruments = watch.instruments(month.site);
    for (std::size_t i = 0; i < series.readings.size(); ++i) {
        const auto& reading = series.readings[i];
        if (!period.contains(reading.time)) continue;
        ++month.readings;
        ++month.flags[static_cast<std::size_t>(series.flags[i])];
        ++month.by_checks[static_cast<std::size_t>(overall(series.verdicts[i]))];
        for (auto& overruled : month.overruled) {
            const auto& said = overruled.said;
            const bool in_it = *said.from <= reading.time && reading.time <= said.to.value_or(*said.from);
            overruled.readings += in_it && reading.value ? 1 : 0;
        }
        if (!counts(series.flags[i])) continue;
        counted.push_back(*reading.value);
        const auto calibration = calibration_at(instruments, reading.time);
        month.expired += calibration == CalibrationState::expired ? 1 : 0;
        month.not_recorded += calibration == CalibrationState::not_recorded ? 1 : 0;
    }
    month.counted = counted.size();
    if (counted.empty()) return;
    month.greatest = *std::max_element(counted.begin(), counted.end());
    month.median = sample_quantile(counted, 0.5, 7);
    month.p95 = sample_quantile(std::move(counted), 0.95, 7);
}

std::optional<double> expected_of(const SiteSeries& series, const Period& period, Instant as_at) {
    if (series.readings.empty() || !(series.interval_min > 0)) return std::nullopt;
    const Instant from = std::max(period.from, series.readings.front().time);
    const auto span = static_cast<double>(std::min(period.to, as_at) - from);
    return std::max(0.0, span / static_cast<double>(ms_per_minute) / series.interval_min);
}

bool watches(const TriggerCondition& condition, const std::string& site) {
    const auto& sites = condition.trigger.sites;
    return std::find(sites.begin(), sites.end(), site) != sites.end();
}

SiteMonth month_of(TurbidityWatch& watch, const Site& site, const Period& period, Instant as_at) {
    SiteMonth month;
    month.site = site.site;
    month.role = site.role;
    month.unit = site.unit;
    for (auto& said : watch.overrules(site.site))
        month.overruled.push_back({std::move(said), 0});
    const SiteSeries& series = *watch.series(site.site);
    count_readings(watch, series, period, month);
    std::erase_if(month.overruled, [](const auto& overruled) { return overruled.readings == 0; });
    month.expected = expected_of(series, period, as_at);
    for (const auto& condition : watch.conditions()) {
        if (!watches(condition, site.site)) continue;
        month.over.push_back({condition.number, condition.trigger.versions.back().rule.tier,
                              watch.hours_over(condition, site.site, period)});
    }
    return month;
}

}  // namespace

std::vector<SiteMonth> site_months(TurbidityWatch& watch, const Period& period, Instant as_at) {
    std::vector<SiteMonth> months;
    for (const auto& site : watch.sites())
        months.push_back(month_of(watch, site, period, as_at));
    return months;
}

}  // namespace spoilbook
