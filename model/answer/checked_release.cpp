// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/checked_release.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "model/answer/board_state.h"
#include "model/answer/book_records.h"
#include "model/answer/surface_findings.h"
#include "model/consent/limit.h"
#include "model/consent/surface_rule.h"

namespace spoilbook {

namespace {

bool stops_by_the_bed(const Condition& condition) {
    if (condition.kind != "surface") return false;
    const auto rule = surface_rule_from(body_of(condition));
    return rule && rule->stops_releases;
}

bool stops_by_the_water(const Condition& condition, const Zone& zone) {
    if (condition.kind != "series") return false;
    const auto rule = series_rule_from(condition, zone);
    if (!rule || rule->variable != "turbidity" || rule->activity == "dredge") return false;
    return std::any_of(rule->responses.begin(), rule->responses.end(), [](const Response& response) {
        return response.action == "stop" || response.action == "change_cell";
    });
}

WaterState water_state(const TriggerState& state, Instant at) {
    WaterState water;
    if (state.of->consent != nullptr) water.consent = state.of->consent->id;
    water.condition = state.of->number;
    water.site = state.standing.site;
    if (state.open) water.event_since = state.open->event.start;
    const bool stale = is_stale(state, at);
    water.told = state.standing.last.telling != Telling::cannot_tell && !stale;
    if (stale) water.silent_since = state.standing.at;
    return water;
}

}  // namespace

bool asks_the_book(const Season& season) {
    const auto& conditions = season.conditions.rows();
    return std::any_of(conditions.begin(), conditions.end(), [&](const Condition& condition) {
        return condition.kind == "watch" || stops_by_the_bed(condition) ||
               stops_by_the_water(condition, season.zone);
    });
}

CheckFacts no_facts() {
    CheckFacts facts;
    facts.water.emplace();
    return facts;
}

CheckFacts check_facts(const Book& book, const Season& season, Instant at, Instant as_at) {
    CheckFacts facts = no_facts();
    facts.watches = watches_of(book);
    const Instant then = std::min(at, as_at);
    SurveyBeds beds(book);
    bool by_the_water = false;
    for (const auto& condition : season.conditions.rows()) {
        by_the_water =
            by_the_water || (in_force(condition, at) && stops_by_the_water(condition, season.zone));
        // A version that begins later may hold on when this one ends.
        const bool is_over = condition.to && *condition.to <= at;
        if (is_over || !stops_by_the_bed(condition)) continue;
        const auto states = newest_beds(season, condition, then, beds);
        facts.beds.insert(facts.beds.end(), states.begin(), states.end());
    }
    if (!by_the_water) return facts;
    TurbidityWatch watch(book, season, then);
    for (const auto& state : watch.states())
        facts.water->push_back(water_state(state, then));
    return facts;
}

Checked<ReleaseCheck> checked_release(const Book& book, const Ledger& done, const PlannedRelease& planned,
                                      Instant as_at) {
    return check_release(done, planned, check_facts(book, done.season(), planned.at, as_at));
}

}  // namespace spoilbook
