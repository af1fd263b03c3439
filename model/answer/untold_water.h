// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "model/answer/turbidity.h"

namespace spoilbook {

/// The last reading of a site is older than the condition lets one be: how the water is cannot be told.
bool is_stale(const TriggerState& state, Instant at);

/// Why how the water stands at a site under a condition cannot be told at that instant, in words; empty where
/// it can be told.
std::string why_site_is_not_told(const TriggerState& state, Instant at, const Zone& zone);

}  // namespace spoilbook
