// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/return/not_judged.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "model/answer/board_state.h"
#include "model/consent/finding.h"
#include "model/consent/floor_ends.h"
#include "model/consent/time_rule.h"

namespace spoilbook {

namespace {

constexpr const char* does_not_read = "its members do not read";

bool has_site(const Condition& condition, const ReturnFacts& facts) {
    if (!facts.turbidity) return false;
    const auto& watched = facts.turbidity->conditions();
    return std::any_of(watched.begin(), watched.end(), [&](const TriggerCondition& one) {
        return one.number == condition.condition &&
               (one.consent == nullptr || one.consent->id == condition.consent);
    });
}

std::string of_quantity(const Condition& condition, const Zone& zone) {
    const auto quantity = quantity_from(condition, zone);
    if (!quantity) return does_not_read;
    return quantity->at_most ? "" : why_floor_is_not_judged(*quantity);
}

std::string of_series(const Condition& condition, const ReturnFacts& facts) {
    const auto rule = series_rule_from(condition, facts.season->zone);
    if (!rule) return does_not_read;
    const bool is_watched = rule->variable != "turbidity" || has_site(condition, facts);
    return is_watched ? "" : "the book has no readings of its sites";
}

std::string why_not(const Condition& condition, const ReturnFacts& facts) {
    const auto body = body_of(condition);
    if (!body.is_object()) return does_not_read;
    if (auto why = not_judged(*facts.season, condition, body); !why.empty()) return why;
    if (condition.kind == "quantity") return of_quantity(condition, facts.season->zone);
    if (condition.kind == "series") return of_series(condition, facts);
    if (condition.kind == "time") return time_rule_from(body) ? "" : does_not_read;
    if (condition.kind != "place" && condition.kind != "watch") return "";
    if (!judges_releases(body)) return "it is about dredging, and the book tells only of releases";
    const bool reads = condition.kind == "watch" || body.contains("inside") || body.contains("outside");
    return reads ? "" : does_not_read;
}

}  // namespace

std::vector<NotJudged> not_judged_in(const ReturnFacts& facts) {
    std::vector<NotJudged> list;
    for (const auto& condition : facts.season->conditions.rows()) {
        const bool in_period = (!condition.from || *condition.from < facts.period.to) &&
                               (!condition.to || *condition.to > facts.period.from);
        if (!in_period) continue;
        auto why = why_not(condition, facts);
        if (!why.empty()) list.push_back({&condition, std::move(why)});
    }
    return list;
}

}  // namespace spoilbook
