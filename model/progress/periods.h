// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "model/unit/instant.h"

namespace spoilbook {

using Periods = std::vector<Period>;

/// All hours of periods that do not overlap.
double hours(const Periods& periods);
/// In order, and what overlaps or touches made one.
Periods joined(Periods periods);
/// Where both lie; each is joined.
Periods both(const Periods& a, const Periods& b);
/// What of `whole` none of `parts` covers; parts are joined.
Periods left_of(const Period& whole, const Periods& parts);
/// What of `parts` lies in `whole`; parts are joined. Looks at no other: a season is cut shift by shift.
Periods inside(const Periods& parts, const Period& whole);

}  // namespace spoilbook
