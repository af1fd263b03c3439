// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/answer/book_records.h"
#include "model/return/condition_judged.h"
#include "model/return/return_facts.h"

namespace spoilbook {

/// Everything of the period that was done by the as-at, held against every condition of kind place, time,
/// series of wave height or wind, record, watch or surface that was in force then; places by the tracks where
/// a condition asks for the end or the whole of a release. Without `ask.tracks` such a condition cannot be
/// told.
void judge_releases(const Ledger& ledger, const ReturnAsk& ask, const ReturnFacts& facts,
                    BookRecords& records, JudgedConditions& judged);

}  // namespace spoilbook
