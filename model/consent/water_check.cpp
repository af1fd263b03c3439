// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "model/consent/kind_checks.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

/// Whether the answer to the rule's own tier is that action.
bool answers_with(const SeriesRule& rule, const char* action) {
    return std::any_of(rule.responses.begin(), rule.responses.end(), [&](const Response& response) {
        return response.action == action && (!response.tier || response.tier == rule.tier);
    });
}

/// The cell of the last release that ended by then and whose cell is known; nil: none.
Id cell_in_use(const Ledger& ledger, const LedgerLine& planned, Instant by) {
    Id cell;
    for (const auto& line : ledger.released()) {
        const bool counts = line.at <= by && line.release->trip != planned.release->trip;
        if (counts && line.cell) cell = line.cell;
    }
    return cell;
}

std::string why_not_told(const WaterState& water, const Zone& zone) {
    if (!water.silent_since) return "the readings of " + water.site + " do not suffice";
    return fmt::format("the last reading of {} is of {}, too old to tell", water.site,
                       instant_text(*water.silent_since, zone));
}

CheckReason change_of_cell(const Ledger& ledger, const LedgerLine& line, const std::string& event,
                           Instant since) {
    const Id in_use = cell_in_use(ledger, line, since);
    if (!line.cell || !in_use)
        return reason_of(CheckState::cannot_tell,
                         event + ": the cell must change, and one of the two is not known");
    if (line.cell != in_use) return reason_of(CheckState::clear);
    return reason_of(CheckState::hold, event + ": the cell must change");
}

}  // namespace

bool asks_to_change_cell(const SeriesRule& rule) {
    return rule.variable == "turbidity" && answers_with(rule, "change_cell") && !answers_with(rule, "stop");
}

CheckReason check_water(const Ledger& ledger, const Condition& condition, const SeriesRule& rule,
                        const LedgerLine& line, const CheckFacts& facts) {
    const bool stops = answers_with(rule, "stop");
    CheckReason worst = reason_of(CheckState::clear);
    if (!stops && !answers_with(rule, "change_cell")) return worst;
    if (!facts.water) return reason_of(CheckState::cannot_tell, "its loggers were not asked");
    bool watched = false;
    for (const auto& water : *facts.water) {
        if (water.consent != condition.consent || water.condition != condition.condition) continue;
        watched = true;
        CheckReason reason = reason_of(CheckState::clear);
        if (water.event_since) {
            const std::string event =
                fmt::format("an event at {} is open since {}, until its all-clear", water.site,
                            instant_text(*water.event_since, ledger.season().zone));
            reason = stops ? reason_of(CheckState::hold, event)
                           : change_of_cell(ledger, line, event, *water.event_since);
        } else if (!water.told) {
            reason = reason_of(CheckState::cannot_tell, why_not_told(water, ledger.season().zone));
        }
        if (reason.state > worst.state) worst = std::move(reason);
    }
    return watched ? worst : reason_of(CheckState::cannot_tell, "no site of it has a logger");
}

}  // namespace spoilbook
