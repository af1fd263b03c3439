// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/return/return_facts.h"

namespace spoilbook {

/// The limits of a return: those in force at `limits_at`, and those that ended in the period with no version
/// after them, as they stood at their last millisecond. A condition that does not read is in `unread`.
std::vector<LimitState> limits_in(const JudgedLimits& judged, const Season& season, const Period& period,
                                  Instant limits_at, Refusals& unread);

/// Whether, as reported or as restated, more was used than a limit allows at a release of the period, or at
/// `limits_at`.
bool exceeded_in(const JudgedLimits& judged, const LimitState& state, const Period& period,
                 Instant limits_at);

/// What the limits of `facts` have against saying that all was met: over now, exceeded at a release of the
/// period (whatever was exceeded before it), or loads that no method can value.
std::vector<std::string> limit_reasons(const Ledger& ledger, const JudgedLimits& judged,
                                       const ReturnFacts& facts);

}  // namespace spoilbook
