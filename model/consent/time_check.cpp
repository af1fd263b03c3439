// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "model/consent/kind_checks.h"
#include "model/consent/sun_site.h"
#include "model/consent/time_state.h"

namespace spoilbook {

CheckReason check_time(const Ledger& ledger, const nlohmann::json& body, const PlannedRelease& planned) {
    const auto rule = time_rule_from(body);
    if (!rule) return reason_of(CheckState::cannot_tell, "its times do not read");
    const Season& season = ledger.season();
    const TideLevels tide(season.tides);
    const TimeSite by{season.zone, rule->by_day ? sun_site(ledger, planned.ground) : std::nullopt, tide};
    const auto held = hold_state(*rule, by, planned.at);
    if (!held) return reason_of(CheckState::cannot_tell, what_is_missing(*rule, by, planned.at));
    if (!*held) return reason_of(CheckState::clear);
    return reason_of(CheckState::hold, "not at this time", hold_ends(*rule, by, planned.at));
}

}  // namespace spoilbook
