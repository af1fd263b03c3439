// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/answer/release_places.h"
#include "model/consent/finding.h"

namespace spoilbook {

/// What a condition of kind place says of a release that happened.
struct PlaceFinding {
    Finding finding;
    std::string test;              ///< release_start, release_end, whole_release
    std::optional<double> room_m;  ///< least, on the right side of the line, inset taken off
};

/// Every condition of kind place that was in force at the release's end and has it in its scope. Complied at
/// 2 u of room or more, breached at -2 u or less, else it cannot be told. release_start is judged where the
/// doors opened (as `start` has it), release_end and whole_release by the trip's track alone; without one, or
/// with a gap longer than the condition's (else the usual) interval, they cannot be told. `line` as the
/// ledger has the release.
std::vector<PlaceFinding> place_findings(const Ledger& ledger, const LedgerLine& line,
                                         const ReleasePlace& start, const Checked<TripTrack>* track);

/// The same of one condition, in force or not. Nothing where the release is out of its scope, or where its
/// members do not read.
std::optional<PlaceFinding> place_finding(const Ledger& ledger, const Condition& condition,
                                          const LedgerLine& line, const ReleasePlace& start,
                                          const Checked<TripTrack>* track);

}  // namespace spoilbook
