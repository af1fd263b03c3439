// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/time_rule.h"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>

#include "model/unit/calendar.h"

namespace spoilbook {

namespace {

using nlohmann::json;

int number_at(const std::string& text, std::size_t at) {
    return std::stoi(text.substr(at, 2));
}

/// "09-01..10-15", or one day: "12-25"
TimeRule::DateSpan date_span(const std::string& text) {
    if (text.size() == 5) {
        const int day = number_at(text, 0) * 100 + number_at(text, 3);
        return {day, day};
    }
    return {number_at(text, 0) * 100 + number_at(text, 3), number_at(text, 7) * 100 + number_at(text, 10)};
}

/// "20:00..06:00"
TimeRule::HourSpan hour_span(const std::string& text) {
    return {number_at(text, 0) * 60 + number_at(text, 3), number_at(text, 7) * 60 + number_at(text, 10)};
}

int weekday_from(const json& value) {
    static constexpr std::array names{"mon", "tue", "wed", "thu", "fri", "sat", "sun"};
    std::string text = value.get<std::string>().substr(0, 3);
    std::transform(text.begin(), text.end(), text.begin(),
                   [](unsigned char c) { return static_cast<char>(c | 0x20); });
    const auto found = std::find(names.begin(), names.end(), text);
    if (found == names.end()) throw std::invalid_argument("weekdays");
    return static_cast<int>(found - names.begin()) + 1;
}

bool in_dates(const TimeRule& rule, const WallTime& wall) {
    const int today = wall.day.month * 100 + wall.day.day;
    return rule.dates.empty() || std::any_of(rule.dates.begin(), rule.dates.end(), [&](const auto& span) {
               return span.from <= span.to ? span.from <= today && today <= span.to
                                           : today >= span.from || today <= span.to;
           });
}

bool in_hours(const TimeRule& rule, const WallTime& wall) {
    const int minute = wall.hour * 60 + wall.minute;
    return rule.hours.empty() || std::any_of(rule.hours.begin(), rule.hours.end(), [&](const auto& span) {
               return span.from < span.to ? span.from <= minute && minute < span.to
                                          : minute >= span.from || minute < span.to;
           });
}

}  // namespace

/// Its midnight, the edges of its hours, and a change of the clocks, which may skip an edge or show it twice.
std::vector<Instant> clock_turns(const TimeRule& rule, const Zone& zone, Day day) {
    std::vector<Instant> turns{zone.day_start(day)};
    const Instant day_end = zone.day_start(plus_days(day, 1));
    for (auto change = zone.next_change(turns.front()); change && *change < day_end;
         change = zone.next_change(*change))
        turns.push_back(*change);
    for (const auto& span : rule.hours) {
        for (const int minute : {span.from, span.to}) {
            WallTime wall;
            wall.day = minute >= 24 * 60 ? plus_days(day, 1) : day;
            wall.hour = minute / 60 % 24;
            wall.minute = minute % 60;
            turns.push_back(zone.instant(wall));
            if (zone.occurs(wall) == Occurs::twice) turns.push_back(zone.later_instant(wall));
        }
    }
    std::sort(turns.begin(), turns.end());
    return turns;
}

Checked<TimeRule> time_rule_from(const json& body) {
    try {
        TimeRule rule;
        rule.forbids = body.value("mode", "forbid") != "allow";
        for (const auto& text : body.value("dates", json::array()))
            rule.dates.push_back(date_span(text.get<std::string>()));
        const auto hours = body.value("hours", json::array());
        if (hours.is_array()) {
            for (const auto& text : hours)
                rule.hours.push_back(hour_span(text.get<std::string>()));
        } else {
            rule.needs_more = true;
        }
        for (const auto& day : body.value("weekdays", json::array()))
            rule.weekdays.push_back(weekday_from(day));
        if (body.contains("daylight")) rule.by_day = body.at("daylight").get<std::string>() == "day";
        const auto tide = body.value("tide_level_m", json::object());
        if (tide.contains("min")) rule.tide_min_m = tide.at("min").get<double>();
        if (tide.contains("max")) rule.tide_max_m = tide.at("max").get<double>();
        rule.tied_to = body.value("tied_to", "");
        rule.needs_more =
            rule.needs_more || rule.by_day || body.contains("tide_level_m") || body.contains("tied_to");
        return rule;
    } catch (const std::exception&) {
        return Refusal{"condition-does-not-read", "", "its times do not read", "see docs/conditions.md"};
    }
}

bool fits_clock(const TimeRule& rule, const Zone& zone, Instant at) {
    const auto wall = zone.wall(at);
    const auto& days = rule.weekdays;
    const bool on_day =
        days.empty() || std::find(days.begin(), days.end(), iso_weekday(wall.day)) != days.end();
    return on_day && in_dates(rule, wall) && in_hours(rule, wall);
}

bool holds_at(const TimeRule& rule, const Zone& zone, Instant at) {
    return fits_clock(rule, zone, at) == rule.forbids;
}

std::optional<Instant> holds_until(const TimeRule& rule, const Zone& zone, Instant at) {
    Day day = zone.day_of(at);
    for (int i = 0; i < 732; ++i, day = plus_days(day, 1)) {
        for (const auto turn : clock_turns(rule, zone, day)) {
            if (turn > at && !holds_at(rule, zone, turn)) return turn;
        }
    }
    return std::nullopt;
}

}  // namespace spoilbook
