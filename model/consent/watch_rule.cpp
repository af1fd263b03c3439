// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/watch_rule.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "model/unit/minutes.h"

namespace spoilbook {

namespace {

bool has_seen(const Watch& watch) {
    if (watch.number) return *watch.number > 0;
    return watch.distance_m || !watch.species.empty() || !watch.seen.empty();
}

}  // namespace

WatchRule watch_rule_from(const nlohmann::json& body) {
    WatchRule rule;
    rule.before_ms = ms_of_minutes(body.value("before_minutes", 0.0));
    if (body.contains("radius_m")) rule.radius_m = body.at("radius_m").get<double>();
    rule.clear_ms = ms_of_minutes(body.value("clear_minutes", 0.0));
    rule.log = body.value("log", false);
    return rule;
}

std::unordered_map<Id, std::vector<const Watch*>> watches_by_trip(const std::vector<Watch>& rows) {
    std::unordered_map<Id, std::vector<const Watch*>> watches;
    for (const auto& watch : rows) {
        if (watch.start) watches[watch.trip].push_back(&watch);
    }
    for (auto& [trip, own] : watches)
        std::stable_sort(own.begin(), own.end(),
                         [](const Watch* a, const Watch* b) { return *a->start < *b->start; });
    return watches;
}

std::optional<std::int64_t> kept_before(const std::vector<const Watch*>& watches, Instant at) {
    std::optional<Instant> from, to;
    for (const auto* watch : watches) {
        if (!to || *watch->start > *to) from = watch->start;
        const Instant end = watch->end.value_or(at);
        to = to ? std::max(*to, end) : end;
    }
    if (!to || *to < at) return std::nullopt;
    return at - *from;
}

std::vector<Sighting> sightings_against(const WatchRule& rule, const std::vector<const Watch*>& watches,
                                        Instant at) {
    std::vector<Sighting> found;
    for (const auto* watch : watches) {
        if (!(*watch->start < at) || !has_seen(*watch)) continue;
        if (rule.radius_m && watch->distance_m && *watch->distance_m > *rule.radius_m) continue;
        Sighting sighting{watch, std::nullopt, !rule.radius_m || watch->distance_m.has_value()};
        if (watch->cleared) sighting.clear_from = *watch->cleared + rule.clear_ms;
        if (!sighting.clear_from || *sighting.clear_from > at) found.push_back(sighting);
    }
    return found;
}

}  // namespace spoilbook
