// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/closed_days.h"

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

}  // namespace

std::vector<bool> closed_days(const Season& season, const std::vector<Day>& days) {
    std::vector<bool> closed(days.size());
    for (const auto& condition : season.conditions.rows()) {
        if (condition.kind != "time") continue;
        const auto body = nlohmann::json::parse(condition.body, nullptr, false);
        if (!body.is_object() || !is_for_all(body)) continue;
        const auto rule = time_rule_from(body);
        if (!rule || rule->needs_more) continue;
        for (std::size_t i = 0; i < days.size(); ++i) {
            if (in_force(condition, season.zone.day_start(days[i])) &&
                holds_all_day(*rule, season.zone, days[i]))
                closed[i] = true;
        }
    }
    return closed;
}

}  // namespace spoilbook
