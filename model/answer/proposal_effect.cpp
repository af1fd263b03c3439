// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/proposal_effect.h"

#include <algorithm>

namespace spoilbook {

namespace {

/// Ids that no book gives: its own have a version in the seventh byte.
Id made_up_id() {
    Id id;
    id.bytes[0] = 0xFE;
    return id;
}

const LimitState* same_limit(const std::vector<LimitState>& states, const LimitState& state) {
    const auto found = std::find_if(states.begin(), states.end(), [&](const LimitState& other) {
        return other.condition->id == state.condition->id &&
               other.member.has_value() == state.member.has_value() &&
               (!state.member || other.member->name == state.member->name);
    });
    return found == states.end() ? nullptr : &*found;
}

}  // namespace

std::vector<LimitEffect> effect_of(const Ledger& ledger, const Factor& revision, Instant as_at) {
    Season season = ledger.season();
    Factor row = revision;
    row.id = made_up_id();
    season.factors.add(row);
    const Ledger revised(season);
    const auto restated = limits_as_restated(revised, as_at);
    const auto judged = limits_at(revised, as_at);
    std::vector<LimitEffect> effects;
    for (const auto& now : limits_at(ledger, as_at)) {
        const auto* with = same_limit(restated, now);
        const auto* waiting = same_limit(judged, now);
        if (with == nullptr || waiting == nullptr) continue;
        effects.push_back({now, with->used, with->used_u, with->headroom(), with->p_over, waiting->used});
    }
    return effects;
}

}  // namespace spoilbook
