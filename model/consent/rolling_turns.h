// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/count.h"
#include "model/consent/window.h"

namespace spoilbook {

/// The instants after `at`, ascending, at which what a rolling window (or a mean's) holds of `counts`
/// (ascending, none after `at`) may change while nothing new comes in: a count leaves it at each, or comes
/// back, or the window's length changes with a month's length or with the clocks. Ends when all have left
/// for good, at the latest after 40 years.
std::vector<Instant> rolling_turns(const WindowRule& rule, const Season& season,
                                   const std::vector<Count>& counts, Instant at);

}  // namespace spoilbook
