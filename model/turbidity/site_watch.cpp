// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/site_watch.h"

#include <algorithm>
#include <cmath>

#include "model/unit/calendar.h"

namespace spoilbook {

namespace {

std::int64_t ms_of_hours(double hours) {
    return std::llround(hours * static_cast<double>(ms_per_hour));
}

/// Whole days on the wall clock, what is left of them as time.
Instant days_before(const Zone& zone, Instant at, double days) {
    const double whole = std::floor(days);
    return shift_days(zone, at, -static_cast<int>(whole)) - ms_of_hours((days - whole) * 24);
}

}  // namespace

SiteWatch::SiteWatch(const Trigger& trigger, std::string site, const SeriesOf& series_of)
    : trigger_(trigger), series_of_(series_of), series_(series_of(site)) {
    standing_.site = std::move(site);
    for (const auto& version : trigger.versions)
        longest_days_ = std::max(longest_days_, version.rule.passes.days);
    find_next();
}

std::optional<std::size_t> SiteWatch::version_at(Instant at) const {
    for (std::size_t i = trigger_.versions.size(); i-- > 0;) {
        const auto& version = trigger_.versions[i];
        if (!version.holds_at(at)) continue;
        const auto& sites = version.rule.sites;
        const bool watched =
            sites.empty() || std::find(sites.begin(), sites.end(), standing_.site) != sites.end();
        return watched ? std::optional(i) : std::nullopt;
    }
    return std::nullopt;
}

void SiteWatch::find_next() {
    if (series_ == nullptr) return;
    const auto& readings = series_->readings;
    for (; next_ < readings.size(); ++next_) {
        // A time that stands twice is judged once, with both readings in the window.
        const bool again = standing_.at && readings[next_].time == *standing_.at;
        if (readings[next_].value && !again && version_at(readings[next_].time)) return;
    }
}

std::optional<Instant> SiteWatch::next_time() const {
    if (series_ == nullptr || next_ >= series_->readings.size()) return std::nullopt;
    return series_->readings[next_].time;
}

bool SiteWatch::step(const WorkingTime& working, const Zone& zone) {
    const Instant t = series_->readings[next_].time;
    version_ = *version_at(t);
    const auto& rule = version().rule;
    auto judge = judges_.find(version_);
    if (judge == judges_.end()) judge = judges_.try_emplace(version_, rule, *series_, series_of_).first;
    standing_.at = t;
    standing_.last = judge->second.at(t);
    ++next_;
    find_next();

    const bool watching = !rule.only_working || working.goes_on(t, ms_of_hours(rule.plus_hours));
    const bool counted = standing_.last.telling == Telling::over && watching;
    if (standing_.last.compared) remember(counted);
    switch (standing_.last.telling) {
        case Telling::cannot_tell:
            end_hold();
            return false;
        case Telling::not_over:
            end_hold();
            if (!standing_.clear_since) standing_.clear_since = t;
            return false;
        case Telling::over:
            break;
    }
    standing_.clear_since.reset();
    if (watching) return over(t, zone);
    end_hold();
    return false;
}

void SiteWatch::end_hold() {
    standing_.over_since.reset();
    run_since_.reset();
}

/// Beside what is over, what is told between: the peak is looked for in both.
void SiteWatch::remember(bool over) {
    if (longest_days_ == 0) return;
    const std::size_t before = told_.empty() ? 0 : told_.back().overs;
    told_.push_back({*standing_.at, *standing_.last.compared, over, before + (over ? 1 : 0)});
    // An hour more, for the wall clock's days may have 25.
    const Instant cut = *standing_.at - ms_of_hours(longest_days_ * 24 + 1);
    while (told_.front().at <= cut)
        told_.pop_front();
}

bool SiteWatch::over(Instant t, const Zone& zone) {
    const Counted now{t, *standing_.last.compared, true, 0};
    const Passing& passes = version().rule.passes;
    // The run is kept under either way of passing: the next version may ask for the other.
    if (!run_since_) {
        run_since_ = t;
        run_peak_ = now;
    }
    if (now.compared > run_peak_.compared) run_peak_ = now;
    if (passes.kind == Passing::Kind::hours_in) return hours_reached(t, zone);
    standing_.over_since = run_since_;
    peak_ = run_peak_;
    return t - *run_since_ >= ms_of_hours(passes.held_hours) && !standing_.open;
}

bool SiteWatch::hours_reached(Instant t, const Zone& zone) {
    const Passing& passes = version().rule.passes;
    const Instant cut = days_before(zone, t, passes.days);
    auto first =
        std::partition_point(told_.begin(), told_.end(), [&](const Counted& told) { return told.at <= cut; });
    while (!first->over)
        ++first;
    standing_.over_since = first->at;
    const std::size_t overs = told_.back().overs - first->overs + 1;
    const double hours = static_cast<double>(overs) * series_->interval_min / 60;
    if (standing_.open || hours < passes.hours - 1e-9) return false;
    peak_ = *std::max_element(first, told_.end(),
                              [](const auto& a, const auto& b) { return a.compared < b.compared; });
    return true;
}

TriggerEvent SiteWatch::passed() const {
    TriggerEvent event;
    event.site = standing_.site;
    event.version = version_;
    event.over_since = *standing_.over_since;
    event.start = *standing_.at;
    event.peak = peak_.compared;
    event.peak_at = peak_.at;
    return event;
}

}  // namespace spoilbook
