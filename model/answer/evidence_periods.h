// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/answer/reconciliation.h"

namespace spoilbook {

/// The bulking factor of a material in force at the as-at, for every bucket; nothing where there is none.
std::optional<BulkingPrior> bulking_prior(const Ledger& ledger, const Id& material, Instant as_at);

/// Which claim-periods are asked for the bulking factors: those that can be judged and hold loads that hang
/// on one, but not those that a factor in force rests on already (its `evidence`), nor, of one claim, those
/// whose span holds what shorter ones cover. What could be judged and is not asked goes into `left_out`.
std::vector<ReconciledPeriod*> evidence_periods(
    std::vector<ReconciledPeriod>& periods, const Ledger& ledger, Instant as_at,
    std::vector<std::pair<std::string, std::string_view>>& left_out);

}  // namespace spoilbook
