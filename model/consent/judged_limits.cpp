// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "model/consent/as_reported.h"
#include "model/consent/first_over.h"
#include "model/consent/limit.h"

namespace spoilbook {

namespace {

const LimitState* same_limit(const std::vector<LimitState>& states, const LimitState& state) {
    const auto found = std::find_if(states.begin(), states.end(), [&](const LimitState& other) {
        return other.condition->id == state.condition->id &&
               other.member.has_value() == state.member.has_value() &&
               (!state.member || other.member->name == state.member->name);
    });
    return found == states.end() ? nullptr : &*found;
}

/// The stricter of both: more used of an at_most, less reached of an at_least.
LimitState judged(const LimitState& restated, const LimitState& reported) {
    const bool at_most = restated.quantity.at_most;
    const bool by_reported = at_most ? reported.used > restated.used : reported.used < restated.used;
    LimitState state = by_reported ? reported : restated;
    state.condition = restated.condition;
    state.consent = restated.consent;
    state.member = restated.member;
    state.unknown = std::max(restated.unknown, reported.unknown);
    if (state.unknown > 0) state.p_over.reset();
    if (restated.used_at_most && reported.used_at_most)
        state.used_at_most = std::max(*restated.used_at_most, *reported.used_at_most);
    if (restated.first_over && reported.first_over)
        state.first_over = std::min(*restated.first_over, *reported.first_over);
    else
        state.first_over = restated.first_over ? restated.first_over : reported.first_over;
    if (reported.used != restated.used) {
        state.used_as_reported = reported.used;
        state.used_as_restated = restated.used;
    }
    return state;
}

void judge_by(const std::vector<LimitState>& reported, std::vector<LimitState>& states) {
    for (auto& state : states) {
        if (const auto* other = same_limit(reported, state)) state = judged(state, *other);
    }
}

}  // namespace

JudgedLimits::JudgedLimits(const Ledger& ledger, Instant accepted_by) : ledger_(ledger) {
    auto season = season_as_reported(ledger.season(), accepted_by);
    if (!season) return;
    reported_season_ = std::make_unique<const Season>(std::move(*season));
    reported_ = std::make_unique<const Ledger>(*reported_season_);
}

std::vector<LimitState> JudgedLimits::limits_of(const Condition& condition, Instant as_at,
                                                Refusals* refusals) const {
    auto states = limits_of_as_restated(ledger_, condition, as_at, refusals);
    if (reported_) judge_by(limits_of_as_restated(*reported_, condition, as_at), states);
    return states;
}

LimitState JudgedLimits::limit_of_trip(const Condition& condition, const Quantity& quantity, Instant as_at,
                                       std::uint32_t trip) const {
    auto state = limit_of_trip_as_restated(ledger_, condition, quantity, as_at, trip);
    if (!reported_) return state;
    return judged(state, limit_of_trip_as_restated(*reported_, condition, quantity, as_at, trip));
}

std::vector<LimitState> JudgedLimits::limits_at(Instant as_at, Refusals* refusals) const {
    auto states = limits_as_restated(ledger_, as_at, refusals);
    if (reported_) judge_by(limits_as_restated(*reported_, as_at), states);
    return states;
}

std::unordered_map<Id, Instant> JudgedLimits::first_overs(const Condition& any_version, Instant as_at,
                                                          std::optional<Instant> from) const {
    auto found = spoilbook::first_overs(ledger_, any_version, as_at, from);
    if (!reported_) return found;
    for (const auto& [member, at] : spoilbook::first_overs(*reported_, any_version, as_at, from)) {
        const auto [place, fresh] = found.try_emplace(member, at);
        if (!fresh) place->second = std::min(place->second, at);
    }
    return found;
}

std::vector<LimitState> limits_at(const Ledger& ledger, Instant as_at, Refusals* refusals) {
    return JudgedLimits(ledger, as_at).limits_at(as_at, refusals);
}

std::vector<LimitState> limits_of(const Ledger& ledger, const Condition& condition, Instant as_at,
                                  Refusals* refusals) {
    return JudgedLimits(ledger, as_at).limits_of(condition, as_at, refusals);
}

}  // namespace spoilbook
