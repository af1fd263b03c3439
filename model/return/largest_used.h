// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/return/return_facts.h"

namespace spoilbook {

/// The most that any day, or week, of the period used of a limit on calendar days or weeks, up to `upto`; of
/// several alike the first. Nothing for every other window, for shares and for floors. By the ledger's
/// reading of the factors.
std::optional<LargestUsed> largest_used(const Ledger& ledger, const LimitState& state, const Period& period,
                                        Instant upto);

}  // namespace spoilbook
