// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/return/largest_used.h"

#include <algorithm>

namespace spoilbook {

namespace {

bool is_short(const Quantity& quantity) {
    const auto& window = quantity.window;
    return quantity.at_most && !quantity.share_of_total && window.kind == WindowKind::calendar &&
           (window.unit == WindowUnit::days || window.unit == WindowUnit::weeks);
}

int member_number(const LimitState& state, const std::vector<Member>& members) {
    if (!state.member) return -1;
    const auto found = std::find_if(members.begin(), members.end(),
                                    [&](const Member& member) { return member.id == state.member->id; });
    return found == members.end() ? -1 : static_cast<int>(found - members.begin());
}

}  // namespace

std::optional<LargestUsed> largest_used(const Ledger& ledger, const LimitState& state, const Period& period,
                                        Instant upto) {
    if (!is_short(state.quantity)) return std::nullopt;
    const Season& season = ledger.season();
    const Consent consent = state.consent == nullptr ? Consent{} : *state.consent;
    const auto members = members_of(state.quantity, season);
    const auto counts = counts_of(state.quantity, members, *state.condition, ledger);
    const int member = member_number(state, members);
    std::optional<LargestUsed> largest;
    for (Instant at = period.from; at < period.to && at <= upto;) {
        const auto window = window_at(state.quantity.window, consent, season, at);
        if (!window || !window->start || !window->end) return std::nullopt;
        const Instant last = std::min(*window->end - 1, upto);
        const auto found = used_in(counts, member, adding_of(state.quantity), *window, last);
        if (!largest || found.used.value > largest->used)
            largest = LargestUsed{found.used.value, found.used.u(), *window->start, *window->end};
        at = *window->end;
    }
    return largest;
}

}  // namespace spoilbook
