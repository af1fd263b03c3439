// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/answer/claim_period_loads.h"
#include "model/volume/reconcile.h"

namespace spoilbook {

/// Whether barges and bed agree within their uncertainties.
enum class Held { agree, disagree, cannot_tell };
/// "agree", "disagree", "cannot_tell".
std::string_view held_text(Held held);

/// One claim-period that had closed by the as-at. Pointers are into the ledger's season.
struct ReconciledPeriod {
    const Removed* row = nullptr;
    const Claim* claim = nullptr;
    const Survey *before = nullptr, *after = nullptr;
    std::optional<Instant> from, to;  ///< local midnight after the day of each survey; loads in [from, to)
    std::optional<Measured> removed, infill, outside;  ///< blank as typed; a blank u is 0 here and `assumed`
    SpanLoads loads;
    Held held = Held::cannot_tell;
    std::string why;                       ///< of cannot_tell, in words
    std::optional<PeriodBalance> balance;  ///< nothing where the bed's side is not known
    std::optional<Measured> residual;      ///< bed − barges at the proposed factors
    std::vector<std::string_view> assumed;
};

/// What all claim-periods say of one material's bulking factor.
struct FactorProposal {
    const Material* material = nullptr;
    std::optional<BulkingPrior> prior;  ///< the factor in force at the as-at
    std::optional<Instant> prior_from;  ///< nothing: materials.csv, as the book began
    std::optional<BulkingFit> fit;      ///< nothing: `why_not`
    std::string_view why_not;
    double chi_square = 0;  ///< of all that hangs together with this material
    int dof = 0;
    std::optional<double> p_value;
    std::vector<std::string> evidence;  ///< labels of the claim-periods
};

struct Reconciliation {
    std::vector<ReconciledPeriod> periods;  ///< ascending by claim, then from
    std::vector<FactorProposal> proposals;  ///< ascending by material's name; those with evidence
    /// Claim-periods that were not asked, and why: part of the factor in force already, or covered by others.
    std::vector<std::pair<std::string, std::string_view>> left_out;
    double chi_square = 0;
    int dof = 0;
    std::optional<double> p_value;
};

/// Barges against the bed, all closed claim-periods of the book (calculations.md). Knows no clock.
Reconciliation reconciliation(const Ledger& ledger, Instant as_at);

}  // namespace spoilbook
