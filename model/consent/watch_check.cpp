// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "model/consent/kind_checks.h"
#include "model/consent/watch_rule.h"
#include "model/unit/number_text.h"

namespace spoilbook {

namespace {

/// The watches of the load's last trip that began by the planned instant.
std::vector<const Watch*> watches_of(const Season& season, const PlannedRelease& planned,
                                     const CheckFacts& facts) {
    const Trip* last = nullptr;
    for (const auto& trip : season.trips.rows()) {
        if (trip.load != planned.load || (trip.departed && *trip.departed > planned.at)) continue;
        if (last == nullptr || !last->departed || (trip.departed && *last->departed <= *trip.departed))
            last = &trip;
    }
    std::vector<const Watch*> watches;
    for (const auto& watch : facts.watches) {
        if (last != nullptr && watch.trip == last->id && watch.start && *watch.start <= planned.at)
            watches.push_back(&watch);
    }
    std::ranges::stable_sort(watches, {}, [](const Watch* watch) { return *watch->start; });
    return watches;
}

}  // namespace

CheckReason check_watch(const Season& season, const nlohmann::json& body, const PlannedRelease& planned,
                        const CheckFacts& facts) {
    const WatchRule rule = watch_rule_from(body);
    CheckReason worst = reason_of(CheckState::clear);
    for (const auto& sighting : sightings_against(rule, watches_of(season, planned, facts), planned.at)) {
        if (!sighting.certain) {
            if (worst.state == CheckState::clear)
                worst = reason_of(CheckState::cannot_tell, "how far off it was seen is not recorded");
            continue;
        }
        const bool longer = worst.state == CheckState::hold &&
                            (!worst.until || (sighting.clear_from && *sighting.clear_from <= *worst.until));
        if (!longer)
            worst = reason_of(CheckState::hold,
                              "what was seen inside the radius has not been gone for long enough",
                              sighting.clear_from);
    }
    return worst;
}

std::optional<CheckTask> watch_to_keep(const Season& season, const nlohmann::json& body,
                                       const PlannedRelease& planned, const CheckFacts& facts) {
    const WatchRule rule = watch_rule_from(body);
    const Instant from = planned.at - rule.before_ms;
    const auto watches = watches_of(season, planned, facts);
    const auto kept = kept_before(watches, planned.at);
    if (kept && *kept >= rule.before_ms) return std::nullopt;
    CheckTask task;
    task.from = from;
    task.what =
        rule.radius_m ? fmt::format("keep watch {} m around", number_text(*rule.radius_m)) : "keep watch";
    return task;
}

}  // namespace spoilbook
