// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/turbidity_view.h"

#include <algorithm>
#include <cmath>

#include "model/unit/among.h"
#include "model/unit/calendar.h"

namespace spoilbook {

namespace {

std::int64_t ms_of(double minutes) {
    return static_cast<std::int64_t>(std::ceil(minutes * static_cast<double>(ms_per_minute)));
}

/// The version that judges the site at that time; null where none does.
const SeriesVersion* version_at(const TriggerCondition& condition, const std::string& site, Instant at) {
    const auto& versions = condition.trigger.versions;
    for (std::size_t i = versions.size(); i-- > 0;) {
        if (!versions[i].holds_at(at)) continue;
        const auto& sites = versions[i].rule.sites;
        return sites.empty() || is_among(sites, site) ? &versions[i] : nullptr;
    }
    return nullptr;
}

double greatest_lag_min(const Compare& compare) {
    double lag = std::fabs(compare.lag_min) + compare.tolerance_min.value_or(0);
    for (const auto& part : compare.parts)
        lag = std::max(lag, greatest_lag_min(part));
    return lag;
}

void add_baselines(const Compare& compare, Period known, std::vector<Period>& spans) {
    for (const auto& part : compare.parts)
        add_baselines(part, known, spans);
    if (compare.form == CompareForm::baseline && !compare.baseline.value)
        spans.push_back({compare.baseline.from.value_or(known.from), compare.baseline.to.value_or(known.to)});
}

/// In order and apart from each other.
std::vector<Period> joined(std::vector<Period> spans) {
    std::sort(spans.begin(), spans.end());
    std::vector<Period> all;
    for (const Period& span : spans) {
        if (span.from >= span.to) continue;
        if (!all.empty() && span.from <= all.back().to)
            all.back().to = std::max(all.back().to, span.to);
        else
            all.push_back(span);
    }
    return all;
}

void widen(std::optional<double>& low, std::optional<double>& high, const std::optional<double>& value) {
    if (!value) return;
    if (!low || *value < *low) low = value;
    if (!high || *value > *high) high = value;
}

/// Where column k of n begins in the window.
Instant column_start(Period window, int k, int n) {
    return window.from + (window.to - window.from) * k / n;
}

int column_of(Period window, Instant t, int n) {
    const auto k = static_cast<int>((t - window.from) * n / (window.to - window.from));
    // Division rounds starts down: a time may lie in the next column already.
    return k + 1 < n && column_start(window, k + 1, n) <= t ? k + 1 : k;
}

}  // namespace

TurbidityPlot::TurbidityPlot(const Book& book, const Season& season, Instant as_at, ReadingStore* store)
    : book_(book), store_(store), as_at_(as_at), zone_(season.zone), watch_(book, season, as_at) {}

SiteReader* TurbidityPlot::reader(const std::string& name) {
    const auto held = readers_.find(name);
    if (held != readers_.end()) return held->second.get();
    const Site* site = watch_.site(name);
    if (site == nullptr) return nullptr;
    auto made = std::make_unique<SiteReader>(book_, store_, *site, as_at_);
    return readers_.emplace(name, std::move(made)).first->second.get();
}

std::optional<Period> TurbidityPlot::extent(const std::vector<std::string>& sites) {
    std::optional<Period> all;
    for (const auto& name : sites) {
        SiteReader* one = reader(name);
        if (one == nullptr || !one->extent()) continue;
        const Period span = *one->extent();
        all = all ? Period{std::min(all->from, span.from), std::max(all->to, span.to)} : span;
    }
    return all;
}

/// Read once a view: judges keep hold of it.
const SiteSeries* TurbidityPlot::part(const std::string& site, Period window) {
    const auto held = in_hand_.find(site);
    if (held != in_hand_.end()) return held->second;
    SiteReader* one = reader(site);
    const SiteSeries* series = one == nullptr ? nullptr : &one->part(needed(site, window));
    return in_hand_.emplace(site, series).first->second;
}

TurbidityView TurbidityPlot::view(const std::vector<std::string>& sites, Period window, int columns,
                                  std::size_t judged_at_most) {
    in_hand_.clear();
    TurbidityView view{window, {}};
    std::size_t most = 0;
    for (const auto& name : sites) {
        if (SiteReader* one = reader(name)) most = std::max(most, one->count(window));
    }
    for (const auto& name : sites) {
        SiteReader* one = reader(name);
        if (one == nullptr) continue;
        // Sites are drawn alike, so that one can be held beside the other.
        view.sites.push_back(most > judged_at_most ? view_of_days(*one, window, columns)
                                                   : view_of_readings(*one, window, columns));
    }
    return view;
}

ViewSite TurbidityPlot::view_of_days(SiteReader& reader, Period window, int columns) {
    ViewSite view;
    view.site = reader.site();
    view.whole_days = true;
    const auto days = reader.days(window);
    if (days.empty()) return view;
    const Day first = zone_.day_of(window.from);
    const int all = days_between(zone_.day_of(window.to), first) + 1;
    const int together = (all + columns - 1) / columns;
    int begun = -1;
    std::vector<ReadingSum> parts;
    const auto close = [&] {
        if (!parts.empty())
            view.columns.push_back({zone_.day_start(plus_days(first, begun * together)), sum_of(parts)});
        parts.clear();
    };
    for (const auto& day : days) {
        const int column = days_between(zone_.day_of(day.from), first) / together;
        if (column != begun) close();
        begun = column;
        parts.push_back(day.sum);
        view.readings += day.sum.readings;
    }
    close();
    return view;
}

/// The window with what statistics, pairs and baselines at its readings look back to.
std::vector<Period> TurbidityPlot::needed(const std::string& site, Period window) const {
    double minutes = 0;
    std::vector<Period> spans;
    const Period known{window.from - 100LL * 366 * ms_per_day, as_at_ + 1};
    for (const auto& condition : watch_.conditions()) {
        for (const auto& version : condition.trigger.versions) {
            const auto& rule = version.rule;
            if (rule.control != site && !is_among(condition.trigger.sites, site)) continue;
            minutes = std::max(minutes, rule.over_min + greatest_lag_min(rule.compare));
            add_baselines(rule.compare, known, spans);
        }
    }
    // A day more, for the readings beside a pair's or an instant's.
    const std::int64_t back = ms_of(minutes) + ms_per_day;
    spans.push_back({window.from - back, window.to + back});
    return joined(std::move(spans));
}

ViewSite TurbidityPlot::view_of_readings(SiteReader& reader, Period window, int columns) {
    const std::string& name = reader.site().site;
    const SiteSeries& series = *part(name, window);
    ViewSite view;
    view.site = *watch_.site(name);
    view.interval_min = series.interval_min;
    const std::size_t first = first_from(series, window.from);
    const std::size_t last = first_from(series, window.to);
    view.readings = last - first;
    view.each_reading = view.readings <= static_cast<std::size_t>(columns);
    for (std::size_t i = first; i < last;) {
        const int k = column_of(window, series.readings[i].time, columns);
        std::size_t end = i + 1;
        while (!view.each_reading && end < last && column_of(window, series.readings[end].time, columns) == k)
            ++end;
        const Instant from = view.each_reading ? series.readings[i].time : column_start(window, k, columns);
        view.columns.push_back({from, sum_of(series, i, end)});
        i = end;
    }
    for (const auto& condition : watch_.conditions()) {
        if (is_among(condition.trigger.sites, name))
            view.traces.push_back(trace(condition, series, window, columns, view.each_reading, name));
    }
    return view;
}

ViewTrace TurbidityPlot::trace(const TriggerCondition& condition, const SiteSeries& series, Period window,
                               int columns, bool each_reading, const std::string& site) {
    ViewTrace trace{condition, {}};
    const SeriesOf series_of = [&](const std::string& name) { return part(name, window); };
    std::map<const SeriesVersion*, LevelJudge> judges;
    int begun = -1;
    for (std::size_t i = first_from(series, window.from); i < first_from(series, window.to); ++i) {
        const auto& reading = series.readings[i];
        const SeriesVersion* version = version_at(condition, site, reading.time);
        if (!reading.value || version == nullptr) continue;
        auto judge = judges.find(version);
        if (judge == judges.end())
            judge = judges.try_emplace(version, version->rule, series, series_of).first;
        const Judged judged = judge->second.at(reading.time);
        const int k = column_of(window, reading.time, columns);
        if (each_reading || k != begun) {
            trace.steps.emplace_back().from = each_reading ? reading.time : column_start(window, k, columns);
            begun = k;
        }
        ViewStep& step = trace.steps.back();
        std::optional<double> statistic = judged.compared;
        if (!statistic && complete_enough(judged.statistic, version->rule.min_complete))
            statistic = judged.statistic.value;
        widen(step.statistic_low, step.statistic_high, statistic);
        widen(step.level_low, step.level_high, judged.level);
        step.control.reset();
        if (judged.control && complete_enough(*judged.control, version->rule.min_complete))
            step.control = judged.control->value;
        step.over = step.over || judged.telling == Telling::over;
    }
    return trace;
}

SiteSeries TurbidityPlot::readings(const std::string& site, Period window, std::size_t most) {
    SiteReader* one = reader(site);
    if (one == nullptr) return {};
    // Day by day, so that a wide window does not read all of its readings for the first few.
    SiteSeries found;
    for (const auto& day : one->days(window)) {
        const SiteSeries& part = one->part({{day.from, day.from + 1}});
        found.interval_min = part.interval_min;
        const Instant end = std::min(window.to, day_holding(zone_, day.from).to);
        const std::size_t last = first_from(part, end);
        for (std::size_t i = first_from(part, std::max(window.from, day.from)); i < last; ++i) {
            if (found.readings.size() == most) return found;
            found.readings.push_back(part.readings[i]);
            found.verdicts.push_back(part.verdicts[i]);
            found.flags.push_back(part.flags[i]);
        }
    }
    return found;
}

}  // namespace spoilbook
