// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/return/condition_judged.h"
#include "model/return/return_facts.h"

namespace spoilbook {

/// A condition that judge_places holds against releases.
bool has_judge(const Condition& condition);

/// Every release of the schedule held against every condition of kind place that was in force then, by the
/// tracks where a condition asks for the end or the whole of a release. Without `tracks` such a condition
/// cannot be told.
void judge_places(const Ledger& ledger, const std::vector<ScheduleLine>& schedule, TripTracks* tracks,
                  JudgedConditions& judged);

}  // namespace spoilbook
