// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/closed_days.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "model/consent/limit.h"
#include "model/consent/time_rule.h"
#include "model/unit/calendar.h"

namespace spoilbook {

namespace {

/// Whether a condition stops all work that it names an activity for.
bool is_for_all(const nlohmann::json& body) {
    if (!body.contains("applies")) return true;
    for (const char* list : {"claims", "grounds", "cells", "materials", "classes", "plant"}) {
        if (!body["applies"].value(list, nlohmann::json::array()).empty()) return false;
    }
    return true;
}

bool holds_all_day(const TimeRule& rule, const Zone& zone, Day day) {
    const Instant end = zone.day_start(plus_days(day, 1));
    for (Instant at = zone.day_start(day); at < end; at = at + ms_per_hour / 2) {
        if (!holds_at(rule, zone, at)) return false;
    }
    return true;
}

/// The first day from the second on at which the season turns, past the last where it does not.
std::size_t turn_of(const std::vector<bool>& closed, bool to_closed) {
    for (std::size_t i = 1; i < closed.size(); ++i) {
        if (closed[i] == to_closed && closed[i - 1] != to_closed) return i;
    }
    return closed.size();
}

void set(std::vector<bool>& closed, std::size_t from, std::size_t to, bool value) {
    for (std::size_t i = std::max<std::size_t>(from, 1); i < to; ++i)
        closed[i] = value;
}

}  // namespace

ClosedDays closed_days(const Season& season, const std::vector<Day>& days) {
    ClosedDays found{std::vector<bool>(days.size()), std::vector<bool>(days.size())};
    for (const auto& condition : season.conditions.rows()) {
        if (condition.kind != "time") continue;
        const auto body = nlohmann::json::parse(condition.body, nullptr, false);
        if (!body.is_object() || !is_for_all(body)) continue;
        const auto rule = time_rule_from(body);
        if (!rule || rule->needs_more) continue;
        // Where work is allowed on certain weekdays of certain dates, it is the dates that close the season.
        TimeRule by_dates = *rule;
        if (!rule->forbids) by_dates.weekdays.clear();
        for (std::size_t i = 0; i < days.size(); ++i) {
            if (!in_force(condition, season.zone.day_start(days[i])) ||
                !holds_all_day(*rule, season.zone, days[i]))
                continue;
            const bool of_season = by_dates.weekdays.empty() && holds_all_day(by_dates, season.zone, days[i]);
            (of_season ? found.season : found.rest)[i] = true;
        }
    }
    return found;
}

void move_season(std::vector<bool>& closed, const std::vector<Day>& days, const std::optional<Day>& opens,
                 const std::optional<Day>& closes) {
    const std::size_t end = closed.size();
    const auto place_of = [&](const Day& day) {
        return static_cast<std::size_t>(
            std::clamp(days_between(day, days.front()), 1, static_cast<int>(end)));
    };
    const std::size_t opened = turn_of(closed, false);
    const std::size_t shut = turn_of(closed, true);
    const bool never_shut = std::find(closed.begin(), closed.end(), true) == closed.end();
    const bool opens_again = opens && closes && *closes < *opens;
    if (opens) {
        const std::size_t to = place_of(*opens);
        if (!never_shut)
            set(closed, std::min(opened, to), std::max(opened, to), to > opened);
        else if (!opens_again)
            set(closed, 1, to, true);
    }
    if (closes) {
        const std::size_t to = place_of(*closes);
        if (shut < end)
            set(closed, std::min(shut, to), std::max(shut, to), to < shut);
        else
            set(closed, to, opens_again ? place_of(*opens) : end, true);
    }
}

}  // namespace spoilbook
