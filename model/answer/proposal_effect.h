// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/limit.h"

namespace spoilbook {

/// What a revised factor would do to one limit. `now` points into the ledger's season; what is shown of
/// `revised` is its numbers.
struct LimitEffect {
    LimitState now;   ///< as it is judged now
    double used = 0;  ///< with the revision in force
    double used_u = 0;
    std::optional<double> headroom, p_over;
    double judged = 0;  ///< used, as it would be judged until the authority has accepted the revision
};

/// The effect of one more row of factors.csv on every limit, before it is written: the season is copied, the
/// row added, and every load valued anew. Pure.
std::vector<LimitEffect> effect_of(const Ledger& ledger, const Factor& revision, Instant as_at);

}  // namespace spoilbook
