// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/limit.h"

namespace spoilbook {

/// One thing that a limit's used figure is made of: a release, a load dredged, or an opening amount.
struct EvidenceLine {
    Instant at;
    const LedgerLine* line = nullptr;  ///< null for an opening amount
    Estimate amount;                   ///< in the limit's measure; 0 for trips and days, which count once
    bool unknown = false;              ///< no method can value it: not zero
    std::optional<Method> method;      ///< how the amount is known; nothing where nothing is measured
};

/// All that stands in the limit's window at `as_at` for its member, ascending by time. Parts of one release
/// that count under the member are one line. Points into the ledger, which must outlive it. For a limit on
/// amounts the lines add up to `used` (before it is made a share or a mean).
std::vector<EvidenceLine> evidence(const Ledger& ledger, const LimitState& state, Instant as_at);

}  // namespace spoilbook
