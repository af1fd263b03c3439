// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/reconciliation.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "model/answer/evidence_periods.h"
#include "model/record/survey_day.h"

namespace spoilbook {

namespace {

std::optional<Measured> typed(std::optional<double> value, std::optional<double> u) {
    return value ? std::optional(Measured{*value, u.value_or(0)}) : std::nullopt;
}

/// What was not typed and how it is taken.
void name_assumptions(ReconciledPeriod& period) {
    const Removed& row = *period.row;
    if (!row.infill_in_situ_m3) period.assumed.emplace_back("infill was not recorded and is taken as none");
    if (row.infill_in_situ_m3 && !row.infill_u_m3)
        period.assumed.emplace_back("the infill has no uncertainty recorded and is taken as exact");
    if (!row.outside_in_situ_m3)
        period.assumed.emplace_back("nothing is recorded as dug outside the claim, and none is taken");
    if (row.outside_in_situ_m3 && !row.outside_u_m3)
        period.assumed.emplace_back("what was dug outside has no uncertainty recorded and is taken as exact");
}

ReconciledPeriod period_of(const Removed& row, const Season& season) {
    ReconciledPeriod period;
    period.row = &row;
    period.claim = season.claims.find(row.claim);
    period.before = season.surveys.find(row.before);
    period.after = season.surveys.find(row.after);
    period.from = end_of_survey(period.before, season.zone);
    period.to = end_of_survey(period.after, season.zone);
    period.removed = typed(row.removed_in_situ_m3, row.removed_u_m3);
    period.infill = typed(row.infill_in_situ_m3, row.infill_u_m3);
    period.outside = typed(row.outside_in_situ_m3, row.outside_u_m3);
    name_assumptions(period);
    return period;
}

/// Why its two sides cannot be set against each other at all; empty where they can.
std::string missing_of(const ReconciledPeriod& period) {
    if (period.claim == nullptr) return "it names no claim";
    if (!period.from || !period.to) return "a survey or its day is not recorded";
    if (*period.from >= *period.to) return "the survey before is not earlier than the one after";
    if (!period.removed) return "what was removed is not recorded";
    return "";
}

ClaimPeriod numbers_of(const ReconciledPeriod& period) {
    ClaimPeriod numbers;
    numbers.removed = period.removed.value_or(Measured{});
    numbers.infill = period.infill.value_or(Measured{});
    numbers.outside = period.outside.value_or(Measured{});
    numbers.barges_m3 = period.loads.in_situ_m3;
    numbers.weighed_m3 = period.loads.weighed_m3;
    return numbers;
}

void judge(ReconciledPeriod& period) {
    ClaimPeriod numbers = numbers_of(period);
    for (std::size_t i = 0; i < period.loads.materials.size(); ++i)
        numbers.bulked.push_back({i, period.loads.bulked_m3[i]});
    period.balance = balance(numbers);
    if (period.loads.unknown > 0) {
        period.why = fmt::format("{} of its {} loads have no in-situ volume or no material",
                                 period.loads.unknown, period.loads.loads);
    } else if (!period.row->removed_u_m3) {
        period.why = "the uncertainty of what was removed is not recorded";
    } else if (!period.balance->e_n) {
        period.why = "neither side has an uncertainty";
    } else {
        period.held = *period.balance->e_n > 1 ? Held::disagree : Held::agree;
    }
}

/// The closed claim-periods with their loads, held against the bed one by one.
std::vector<ReconciledPeriod> closed_periods(const Ledger& ledger, Instant as_at) {
    std::vector<ReconciledPeriod> periods;
    std::vector<ClaimSpan> spans;
    std::vector<std::size_t> places;
    for (const auto& row : ledger.season().removed.rows()) {
        auto period = period_of(row, ledger.season());
        if (period.to && *period.to > as_at) continue;
        period.why = missing_of(period);
        if (period.claim != nullptr && period.from && period.to && *period.from < *period.to) {
            spans.push_back({period.claim->id, *period.from, *period.to});
            places.push_back(periods.size());
        }
        periods.push_back(std::move(period));
    }
    auto loads = loads_of(ledger, spans, as_at);
    for (std::size_t i = 0; i < places.size(); ++i) {
        ReconciledPeriod& period = periods[places[i]];
        period.loads = std::move(loads[i]);
        if (period.why.empty()) judge(period);
    }
    std::stable_sort(periods.begin(), periods.end(),
                     [](const ReconciledPeriod& a, const ReconciledPeriod& b) {
                         const std::string none;
                         const auto& x = a.claim == nullptr ? none : a.claim->claim;
                         const auto& y = b.claim == nullptr ? none : b.claim->claim;
                         return x != y ? x < y : a.from < b.from;
                     });
    return periods;
}

/// The materials of the evidence, numbered by name.
std::vector<const Material*> materials_in(const std::vector<ReconciledPeriod*>& evidence,
                                          const Season& season) {
    std::map<std::string, const Material*> by_name;
    for (const auto* period : evidence) {
        for (const auto& id : period->loads.materials) {
            if (const auto* material = season.materials.find(id)) by_name[material->material] = material;
        }
    }
    std::vector<const Material*> materials;
    for (const auto& [name, material] : by_name)
        materials.push_back(material);
    return materials;
}

FactorProposal proposal_for(const Material* material, const std::optional<BulkingPrior>& prior,
                            std::size_t number, const Reconciled& all,
                            const std::vector<ReconciledPeriod*>& evidence) {
    FactorProposal proposal;
    proposal.material = material;
    proposal.prior = prior;
    for (const auto& group : all.groups) {
        if (std::find(group.materials.begin(), group.materials.end(), number) == group.materials.end())
            continue;
        proposal.chi_square = group.chi_square;
        proposal.dof = group.dof;
        proposal.p_value = group.p_value;
        proposal.why_not = group.why_not;
        for (const std::size_t k : group.periods)
            proposal.evidence.push_back(evidence[k]->row->removed);
    }
    for (const auto& fit : all.fits) {
        if (fit.material == number) proposal.fit = fit;
    }
    return proposal;
}

}  // namespace

std::string_view held_text(Held held) {
    return held == Held::agree ? "agree" : held == Held::disagree ? "disagree" : "cannot_tell";
}

Reconciliation reconciliation(const Ledger& ledger, Instant as_at) {
    Reconciliation found;
    found.periods = closed_periods(ledger, as_at);
    const auto evidence = evidence_periods(found.periods, ledger, as_at, found.left_out);
    const auto materials = materials_in(evidence, ledger.season());
    std::vector<std::optional<BulkingPrior>> priors;
    for (const auto* material : materials)
        priors.push_back(bulking_prior(ledger, material->id, as_at));
    std::vector<ClaimPeriod> numbers;
    for (const auto* period : evidence) {
        numbers.push_back(numbers_of(*period));
        for (std::size_t i = 0; i < period->loads.materials.size(); ++i) {
            const auto* material = ledger.season().materials.find(period->loads.materials[i]);
            const auto place = std::find(materials.begin(), materials.end(), material);
            numbers.back().bulked.push_back(
                {static_cast<std::size_t>(place - materials.begin()), period->loads.bulked_m3[i]});
        }
    }
    const Reconciled all = reconcile(numbers, priors);
    for (std::size_t k = 0; k < evidence.size(); ++k)
        evidence[k]->residual = all.residuals[k];
    for (std::size_t m = 0; m < materials.size(); ++m)
        found.proposals.push_back(proposal_for(materials[m], priors[m], m, all, evidence));
    for (auto& proposal : found.proposals) {
        const auto& factors = ledger.loads().factors();
        const auto* version = factors.factors_for(proposal.material->id, Id{}, as_at).bulking;
        if (version != nullptr) proposal.prior_from = version->from;
    }
    found.chi_square = all.chi_square;
    found.dof = all.dof;
    found.p_value = all.p_value;
    return found;
}

}  // namespace spoilbook
