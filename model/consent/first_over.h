// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <unordered_map>

#include "model/consent/ledger.h"

namespace spoilbook {

/// The earliest instant from `from` (nothing: ever) up to `as_at`, both included, at which what was used
/// exceeded the limit, by member's id (nil for a limit that is one, and for what has no member). For every
/// release time t the window that ends or lies at t is judged, by the version of the condition in force at t.
/// A floor (at_least) is never exceeded. Linear in the counts, whatever the window.
std::unordered_map<Id, Instant> first_overs(const Ledger& ledger, const Condition& any_version, Instant as_at,
                                            std::optional<Instant> from = std::nullopt);

}  // namespace spoilbook
