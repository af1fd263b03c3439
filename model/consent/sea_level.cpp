// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/sea_level.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "model/turbidity/level_judge.h"
#include "model/unit/minutes.h"
#include "model/unit/number_text.h"

namespace spoilbook {

namespace {

/// Of the places named, in order of time; no names: of every place.
SiteSeries observed(const Season& season, const std::string& variable,
                    const std::vector<std::string>& places) {
    std::vector<LoggerReading> readings;
    for (const auto& seen : season.observations.rows()) {
        const auto& value = variable == "wind_kn" ? seen.wind_kn : seen.wave_height_m;
        const bool here =
            places.empty() || std::find(places.begin(), places.end(), seen.place) != places.end();
        if (here && seen.time && value) readings.push_back({*seen.time, value});
    }
    return checked_series(std::move(readings), {}, {}, std::nullopt);
}

/// A percentile of the readings of a period that may lie long back.
bool looks_far_back(const Compare& compare) {
    if (compare.form == CompareForm::baseline) return !compare.baseline.value;
    return std::any_of(compare.parts.begin(), compare.parts.end(), looks_far_back);
}

void add_baseline_sites(const Compare& compare, std::set<std::string>& names) {
    names.insert(compare.baseline.site);
    for (const auto& part : compare.parts)
        add_baseline_sites(part, names);
}

}  // namespace

SeaLevel::SeaLevel(const Season& season, SeriesRule rule)
    : rule_(std::move(rule)), seen_(observed(season, rule_.variable, rule_.sites)) {
    std::set<std::string> names{rule_.control};
    add_baseline_sites(rule_.compare, names);
    for (const auto& name : names) {
        if (!name.empty()) places_.emplace(name, observed(season, rule_.variable, {name}));
    }
}

SiteSeries SeaLevel::readings_until(Instant at, std::optional<double> own) const {
    const double back_min = std::max(rule_.over_min, rule_.max_age_hours * 60);
    const auto& all = seen_.readings;
    const auto first = looks_far_back(rule_.compare)
                           ? all.begin()
                           : std::partition_point(all.begin(), all.end(), [&](const auto& reading) {
                                 return reading.time < at - ms_of_minutes(back_min);
                             });
    const auto last =
        std::partition_point(first, all.end(), [&](const auto& reading) { return reading.time <= at; });
    SiteSeries series;
    series.readings.assign(first, last);
    if (own && rule_.sites.empty()) {
        if (!series.readings.empty() && series.readings.back().time == at) series.readings.pop_back();
        series.readings.push_back({at, own});
    }
    series.flags.assign(series.readings.size(), Flag::not_evaluated);
    series.interval_min = seen_.interval_min;
    return series;
}

std::string SeaLevel::number(double value) const {
    return number_text(value) + (rule_.variable == "wind_kn" ? " kn" : " m");
}

SeaAnswer SeaLevel::at(Instant at, std::optional<double> own) const {
    const std::string what = rule_.variable == "wind_kn" ? "wind" : "wave height";
    const SiteSeries series = readings_until(at, own);
    const bool recent = !series.readings.empty() &&
                        at - series.readings.back().time <= ms_of_minutes(rule_.max_age_hours * 60);
    if (!recent) {
        return {std::nullopt, fmt::format("no {} of the last {} h: log an observation{}", what,
                                          number_text(rule_.max_age_hours),
                                          rule_.variable == "wind_kn" ? "" : ", or the trip's own")};
    }
    const SeriesOf series_of = [&](const std::string& place) {
        const auto found = places_.find(place);
        return found == places_.end() ? nullptr : &found->second;
    };
    const auto judged = LevelJudge(rule_, series, series_of).at(series.readings.back().time);
    if (judged.telling == Telling::not_over) return {false, "", judged.compared, judged.level};
    if (judged.telling == Telling::cannot_tell)
        return {std::nullopt,
                "observations do not suffice to work out what its " + what + " is held against"};
    const std::string over = fmt::format("{} {} is above {}", what, number(*judged.compared),
                                         judged.level ? number(*judged.level) : "its level");
    const bool held = rule_.passes.kind == Passing::Kind::hours_in || rule_.passes.held_hours > 0;
    if (held) return {std::nullopt, over + "; for how long is not worked out"};
    return {true, over, judged.compared, judged.level};
}

}  // namespace spoilbook
