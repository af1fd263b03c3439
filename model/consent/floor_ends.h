// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/finding.h"
#include "model/consent/limit.h"

namespace spoilbook {

/// A floor (at_least) for one of its members as a window of it ended.
struct FloorEnd {
    LimitState state;  ///< at the last instant that counts in the window
    Compliance judged = Compliance::cannot_tell;
    std::string window;  ///< in words: "2025-11-01 to 2025-11-30", "trip T-7"
    std::string member;  ///< in words: "cell A1"; empty: the floor is one
    std::string why;     ///< what is not complied, in words
};

/// Why a floor of this rule is not judged at all; empty: it is.
std::string why_floor_is_not_judged(const Quantity& quantity);

/// A floor judged at the end of each of its windows that ended in `span`, member by member, by this version
/// of the condition, in force or not. The term ends as the consent expires, a trip's window with its last
/// release that counts; of rolling windows and means, of which one ends at every instant, the one that ends
/// with the span is judged. By the stricter of both readings, with the factors accepted by `accepted_by`.
/// What is not reached cannot be told while a load cannot be valued, or where the window reaches back before
/// the consent, or the condition's first version, began.
std::vector<FloorEnd> floors_ended(const Ledger& ledger, const Condition& condition, const Quantity& quantity,
                                   const Period& span, Instant accepted_by);

}  // namespace spoilbook
