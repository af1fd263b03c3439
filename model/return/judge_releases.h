// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/return/condition_judged.h"
#include "model/return/return_facts.h"

namespace spoilbook {

/// A condition that judge_releases holds against releases and loads: of kind place, time, or series of wave
/// height or wind.
bool has_judge(const Condition& condition);

/// Everything of the period that was done by the as-at, held against every condition that has_judge and was
/// in force then; places by the tracks where a condition asks for the end or the whole of a release. Without
/// `ask.tracks` such a condition cannot be told.
void judge_releases(const Ledger& ledger, const ReturnAsk& ask, const ReturnFacts& facts,
                    JudgedConditions& judged);

}  // namespace spoilbook
