// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/time_state.h"

#include <algorithm>

#include "model/place/sun.h"
#include "model/unit/calendar.h"

namespace spoilbook {

namespace {

using Fits = std::optional<bool>;

/// What a line between two levels loses in binary digits, with room: a bound is met at its very millisecond.
constexpr double rounding_m = 1e-9;

/// False beats not known beats true.
Fits both(Fits a, Fits b) {
    if (a == false || b == false) return false;
    return a && b ? Fits(true) : std::nullopt;
}

bool by_tide(const TimeRule& rule) {
    return rule.tide_min_m || rule.tide_max_m;
}

Fits fits_sun(const TimeRule& rule, const TimeSite& by, Instant at) {
    if (!rule.by_day) return true;
    if (!by.site) return std::nullopt;
    return is_daylight(at, *by.site) == *rule.by_day;
}

Fits fits_tide(const TimeRule& rule, const TimeSite& by, Instant at) {
    if (!by_tide(rule)) return true;
    const auto level = by.tide.at(at);
    if (!level) return std::nullopt;
    return (!rule.tide_min_m || *level >= *rule.tide_min_m - rounding_m) &&
           (!rule.tide_max_m || *level <= *rule.tide_max_m + rounding_m);
}

std::vector<Instant> turns_on(const TimeRule& rule, const TimeSite& by, Day day) {
    auto turns = clock_turns(rule, by.zone, day);
    const Period span{by.zone.day_start(day), by.zone.day_start(plus_days(day, 1))};
    const auto add = [&turns](const std::vector<Instant>& more) {
        turns.insert(turns.end(), more.begin(), more.end());
    };
    if (rule.by_day && by.site) add(sun_turns(span, *by.site));
    std::vector<double> levels;
    for (const auto& level : {rule.tide_min_m, rule.tide_max_m}) {
        if (level) levels.push_back(*level);
    }
    if (by_tide(rule)) add(by.tide.turns(span, levels));
    std::ranges::sort(turns);
    return turns;
}

}  // namespace

std::optional<bool> hold_state(const TimeRule& rule, const TimeSite& by, Instant at) {
    Fits fits = both(fits_clock(rule, by.zone, at), rule.tied_to.empty() ? Fits(true) : std::nullopt);
    if (fits != false) fits = both(fits, both(fits_sun(rule, by, at), fits_tide(rule, by, at)));
    if (!fits) return std::nullopt;
    return *fits == rule.forbids;
}

std::optional<Instant> hold_ends(const TimeRule& rule, const TimeSite& by, Instant at) {
    constexpr int days_in_two_years = 732;
    Day day = by.zone.day_of(at);
    for (int i = 0; i < days_in_two_years; ++i, day = plus_days(day, 1)) {
        for (const auto turn : turns_on(rule, by, day)) {
            if (turn <= at) continue;
            const auto held = hold_state(rule, by, turn);
            if (held == true) continue;
            return held ? std::optional(turn) : std::nullopt;
        }
    }
    return std::nullopt;
}

std::vector<Instant> HoldTurns::between(Instant from, Instant to) {
    std::vector<Instant> turns;
    const Day last = by_.zone.day_of(to);
    for (Day day = by_.zone.day_of(from); day <= last; day = plus_days(day, 1)) {
        if (day_ != day) of_day_ = turns_on(rule_, by_, day);
        day_ = day;
        for (const auto turn : of_day_) {
            if (from < turn && turn < to) turns.push_back(turn);
        }
    }
    return turns;
}

std::string what_is_missing(const TimeRule& rule, const TimeSite& by, Instant at) {
    if (hold_state(rule, by, at)) return "";
    if (!rule.tied_to.empty()) return "it hangs on " + rule.tied_to + ", which the book does not know";
    if (!fits_sun(rule, by, at)) return "daylight cannot be told without a place";
    return "tide.csv has no rows within 3 h of each other around that time";
}

}  // namespace spoilbook
