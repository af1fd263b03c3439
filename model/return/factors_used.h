// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/return/return_facts.h"

namespace spoilbook {

/// The factor versions that the volumes of the schedule were made with, by name, and whether each still
/// waits for the authority at the as-at.
std::vector<FactorUsed> factors_used(const Ledger& ledger, const std::vector<ScheduleLine>& schedule,
                                     Instant as_at);

/// The period's totals with only those factors that the authority had accepted by the as-at; nothing where
/// both readings are one.
std::optional<Amounts> reported_amounts(const Ledger& ledger, const Period& period, Instant as_at);

}  // namespace spoilbook
