// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/checked_release.h"

#include <algorithm>

#include "model/answer/board_state.h"
#include "model/answer/book_records.h"
#include "model/consent/limit.h"

namespace spoilbook {

namespace {

bool stops_releases(const Condition& condition, const Zone& zone) {
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
        return condition.kind == "watch" || stops_releases(condition, season.zone);
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
    const auto& conditions = season.conditions.rows();
    const bool stops = std::any_of(conditions.begin(), conditions.end(), [&](const Condition& condition) {
        return in_force(condition, at) && stops_releases(condition, season.zone);
    });
    if (!stops) return facts;
    const Instant then = std::min(at, as_at);
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
