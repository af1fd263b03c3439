// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <nlohmann/json.hpp>

#include "model/consent/kind_checks.h"
#include "model/consent/sun_site.h"
#include "model/consent/time_state.h"

namespace spoilbook {

namespace {

TimeSite site_of(const TimeRule& rule, const Ledger& ledger, const TideLevels& tide, const Id& ground) {
    return {ledger.season().zone, rule.by_day ? sun_site(ledger, ground) : std::nullopt, tide};
}

}  // namespace

CheckReason check_time(const Ledger& ledger, const nlohmann::json& body, const PlannedRelease& planned) {
    const auto rule = time_rule_from(body);
    if (!rule) return reason_of(CheckState::cannot_tell, "its times do not read");
    const TideLevels tide(ledger.season().tides);
    const auto by = site_of(*rule, ledger, tide, planned.ground);
    const auto held = hold_state(*rule, by, planned.at);
    if (!held) return reason_of(CheckState::cannot_tell, what_is_missing(*rule, by, planned.at));
    if (!*held) return reason_of(CheckState::clear);
    return reason_of(CheckState::hold, "not at this time", hold_ends(*rule, by, planned.at));
}

bool time_holds_to(const Ledger& ledger, const nlohmann::json& body, const PlannedRelease& planned,
                   Instant to) {
    const auto rule = time_rule_from(body);
    if (!rule) return false;
    const TideLevels tide(ledger.season().tides);
    const auto by = site_of(*rule, ledger, tide, planned.ground);
    const auto turns = HoldTurns(*rule, by).between(planned.at, to);
    return std::all_of(turns.begin(), turns.end(),
                       [&](Instant turn) { return hold_state(*rule, by, turn) == true; });
}

}  // namespace spoilbook
