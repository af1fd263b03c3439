// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/return/return_facts.h"

namespace spoilbook {

/// The conditions in force in the period of `facts` that its return does not hold against what was done, and
/// why: words alone, floors on parts of a trip, what is about dredging where only releases can be
/// judged, turbidity without a site, and what does not read.
std::vector<NotJudged> not_judged_in(const ReturnFacts& facts);

}  // namespace spoilbook
