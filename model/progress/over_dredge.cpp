// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/over_dredge.h"

#include <algorithm>

#include "model/unit/calendar.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

constexpr std::string_view no_u = "a report gives no uncertainty of its over-dredge, taken as exact";

void add(std::optional<Measured>& sum, const Measured& part) {
    if (!sum) sum = Measured{};
    sum->value += part.value;
    sum->u += part.u;
}

void add(OverDredge& to, std::optional<Measured> OverDredge::*part, std::optional<double> value,
         std::optional<double> u) {
    if (!value) return;
    add(to.*part, Measured{*value, u.value_or(0)});
    const bool told = std::find(to.assumed.begin(), to.assumed.end(), no_u) != to.assumed.end();
    if (!u && !told) to.assumed.push_back(no_u);
}

void add_report(OverDredge& to, const Removed& row) {
    const bool first = to.reports.empty();
    to.reports.push_back(row.removed);
    add(to, &OverDredge::within, row.within_allowance_m3, row.within_allowance_u_m3);
    add(to, &OverDredge::beyond, row.beyond_allowance_m3, row.beyond_allowance_u_m3);
    const bool known = row.removed_in_situ_m3 && (first || to.removed_m3);
    to.removed_m3 = known ? std::optional(to.removed_m3.value_or(0) + *row.removed_in_situ_m3) : std::nullopt;
}

/// Whether the day of its later survey was over.
bool made_by(const Removed& row, const Season& season, Instant as_at) {
    const auto* after = season.surveys.find(row.after);
    const auto day = after == nullptr ? Checked<Day>(Refusal{}) : parse_day(after->surveyed_on);
    return day && season.zone.day_start(plus_days(*day, 1)) <= as_at;
}

}  // namespace

std::optional<Measured> OverDredge::below_target() const {
    std::optional<Measured> sum;
    if (within) add(sum, *within);
    if (beyond) add(sum, *beyond);
    return sum;
}

std::optional<double> OverDredge::share() const {
    const auto below = below_target();
    if (!below || !removed_m3 || *removed_m3 <= 0) return std::nullopt;
    return below->value / *removed_m3;
}

Measured cost_of(const Measured& in_situ_m3, double unit_cost) {
    return {in_situ_m3.value * unit_cost, in_situ_m3.u * unit_cost};
}

OverDredged over_dredge(const Season& season, Instant as_at) {
    OverDredged made;
    for (const auto& claim : season.claims.rows()) {
        OverDredge of_claim;
        of_claim.claim = &claim;
        for (const auto& row : season.removed.rows()) {
            const bool tells = row.within_allowance_m3 || row.beyond_allowance_m3;
            if (row.claim != claim.id || !tells || !made_by(row, season, as_at)) continue;
            add_report(of_claim, row);
            add_report(made.all, row);
        }
        if (!of_claim.reports.empty()) made.claims.push_back(std::move(of_claim));
    }
    return made;
}

}  // namespace spoilbook
