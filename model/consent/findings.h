// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/finding.h"
#include "model/consent/held_columns.h"

namespace spoilbook {

/// What is recorded of trips, loads and releases, column by column.
struct RecordColumns {
    HeldColumns trips, loads, releases;
};

// After the act, kind by kind: what one condition says of everything of the span that it judges, in order of
// time. The version given judges what fell while it was in force (a release at its end, a load at loading
// end, a trip at its return, a window at its last instant). Empty where nothing fell to it, and where its
// members do not read: a board says so. docs/calculations.md, Conditions after the act.

/// Kind quantity where it is a floor (floor_ends.h): each of its windows that ended in the period, judged by
/// the version in force as it ended. Without a period nothing: the limit itself tells what is reached by now.
std::vector<Finding> floor_findings(const Ledger& ledger, const Condition& condition, const JudgedSpan& span);

/// Kind time. A release is judged from doors open to its end, also at each instant between at which the
/// answer may turn; a load at loading start and end alone, since nobody logs when the bucket stood still
/// between. Cannot tell where one of the two instants is not recorded and the other does not breach.
std::vector<Finding> time_findings(const Ledger& ledger, const Condition& condition, const JudgedSpan& span);

/// Kind series of wave height (m) or wind (kn), judged as the doors opened (else at the release's end), of
/// a load dredged at loading start: what the trip recorded, else the last observation (sea_level.h).
std::vector<Finding> sea_findings(const Ledger& ledger, const Condition& condition, const JudgedSpan& span);

/// Kind record: required fields of trips, loads and releases; allowed sets of each release; a bound on
/// draught lost in transit cannot be told, for the book has no draughts before the release. A blank field
/// is judged from 24 h after the act on: until then it may still be logged.
std::vector<Finding> record_findings(const Ledger& ledger, const Condition& condition, const JudgedSpan& span,
                                     const RecordColumns& columns);

/// Kind watch: watches on record from before_minutes before doors open until then, and no animal or vessel
/// seen within radius_m that was not cleared clear_minutes before doors open. What was seen is never held
/// against `for`: words of people, and a doubt works against the operator. Without a watch on record it
/// cannot be told; where the condition asks for a log (`log`), that is a breach.
std::vector<Finding> watch_findings(const Ledger& ledger, const Condition& condition, const JudgedSpan& span,
                                    const std::vector<Watch>& watches);

}  // namespace spoilbook
