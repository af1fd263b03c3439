// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/answer/release_places.h"

namespace spoilbook {

/// Whether a release that happened did as a condition of kind place asks.
enum class Finding { complied, cannot_tell, breached };

std::string_view text(Finding finding);

struct PlaceFinding {
    const Condition* condition = nullptr;
    const Consent* consent = nullptr;
    std::string test;  ///< release_start, release_end, whole_release
    Finding finding = Finding::cannot_tell;
    std::optional<double> room_m;  ///< least, on the right side of the line, inset taken off
    std::string why;               ///< for what is not complied, in words
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
