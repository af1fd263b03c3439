// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <unordered_map>

#include "model/consent/ledger.h"

namespace spoilbook {

/// The earliest instant up to `as_at` at which what was used exceeded the limit, by member's name ("" for a
/// limit that is one, and for what has no member). For every release time t the window that ends or lies at
/// t is judged, by the version of the condition in force at t. A floor (at_least) is never exceeded.
/// Linear in the counts, whatever the window.
std::unordered_map<std::string, Instant> first_overs(const Ledger& ledger, const Condition& any_version,
                                                     Instant as_at);

}  // namespace spoilbook
