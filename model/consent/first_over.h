// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>
#include <unordered_map>

#include "model/consent/ledger.h"
#include "model/consent/quantity.h"

namespace spoilbook {

/// The earliest instant from `from` (nothing: ever) up to `as_at`, both included, at which what was used
/// exceeded the limit, by member's id (nil for a limit that is one, and for what has no member). For every
/// release time t the window that ends or lies at t is judged, by the version of the condition in force at t.
/// A floor (at_least) is never exceeded. Linear in the counts, whatever the window.
std::unordered_map<Id, Instant> first_overs(const Ledger& ledger, const Condition& any_version, Instant as_at,
                                            std::optional<Instant> from = std::nullopt);

/// What one member of a limit had used at an instant at which something was added to it, or at which it was
/// judged anew, and the limit then.
struct LimitMoment {
    int member = -1;  ///< place in members_of; -1: none
    Instant at;
    double used = 0;  ///< in the measure's unit, or a fraction for a share
    double limit = 0;
    [[nodiscard]] bool over() const;
};

/// What a walk had to do.
struct WalkWork {
    std::size_t counts = 0;  ///< that it read
    std::size_t moves = 0;   ///< how often its window let one in or out (sweep.h)
};

/// Every such instant in [from, as_at], ascending, of one version while it is in force. What `first_overs`
/// finds its first in.
WalkWork each_moment(const Ledger& ledger, const Condition& version, const Quantity& quantity,
                     std::optional<Instant> from, Instant as_at,
                     const std::function<void(const LimitMoment&)>& hand);

}  // namespace spoilbook
