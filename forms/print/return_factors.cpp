// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "forms/print/figure_text.h"
#include "forms/print/return_tables.h"
#include "model/consent/quantity_text.h"
#include "model/unit/number_text.h"
#include "model/unit/time_text.h"

namespace spoilbook::print {

namespace {

std::string amount_shown(const std::optional<Estimate>& amount) {
    return amount ? fmt::format("{} ± {}", whole_shown(amount->value), u_shown(amount->u())) : "not known";
}

Cell acceptance(const FactorUsed& factor, const Zone& zone) {
    if (factor.waits) return {"waits for the authority", Mark::unknown};
    return factor.accepted ? "accepted " + day_text(zone.day_of(*factor.accepted))
                           : std::string("not revised");
}

Table factors_table(const ReturnFacts& facts) {
    const Zone& zone = facts.season->zone;
    Table table;
    table.columns = {{"Factor", "", Align::left, 1, false},
                     {"Value", "", Align::right, 0, true},
                     {"±", "", Align::right, 0, true},
                     {"From", "", Align::left, 0, true},
                     {"Revision", "", Align::left, 0, false}};
    for (const auto& factor : facts.factors)
        table.rows.push_back(
            {factor.name, number_text(factor.value), factor.u > 0 ? number_text(factor.u) : "not recorded",
             factor.from ? day_text(zone.day_of(*factor.from)) : "the beginning", acceptance(factor, zone)});
    table.zero_rows_text = "None.";
    return table;
}

/// Totals and limits in both readings, while a revision waits for the authority.
Table readings_table(const ReturnFacts& facts) {
    Table table;
    table.caption = "A revision is not accepted yet: both readings, of which the stricter is judged";
    table.columns = {{"What", "", Align::left, 1, false},
                     {"As reported", "", Align::right, 0, true},
                     {"As restated", "", Align::right, 0, true},
                     {"Unit", "", Align::left, 0, true}};
    const auto& restated = facts.totals.amounts;
    table.rows.push_back({"Released in the period, in situ", amount_shown(facts.reported->in_situ_m3),
                          amount_shown(restated.in_situ_m3), "m³"});
    table.rows.push_back({"Released in the period, hopper", amount_shown(facts.reported->hopper_m3),
                          amount_shown(restated.hopper_m3), "m³"});
    for (const auto& state : facts.limits) {
        if (!state.used_as_reported || !state.used_as_restated) continue;
        LimitState reported = state;
        LimitState revised = state;
        reported.used = *state.used_as_reported;
        revised.used = *state.used_as_restated;
        std::string name = "condition " + state.condition->condition + ", used";
        if (state.member) name += " by " + (state.member->name.empty() ? "none" : state.member->name);
        table.rows.push_back({name, used_shown(reported), used_shown(revised), unit_text(state.quantity)});
    }
    table.notes = {
        "As reported: with the factors that the authority has accepted. As restated: with those in "
        "force in the book."};
    return table;
}

}  // namespace

void add_factors(const ReturnFacts& facts, std::vector<Block>& blocks) {
    blocks.emplace_back(Heading{1, "Factors used"});
    blocks.emplace_back(factors_table(facts));
    if (facts.reported) blocks.emplace_back(readings_table(facts));
}

}  // namespace spoilbook::print
