// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>

#include "model/answer/release_places.h"
#include "model/consent/finding.h"

namespace spoilbook {

/// What a condition of kind place says of a release that happened.
struct PlaceFinding {
    Finding finding;
    std::string test;              ///< release_start, release_end, whole_release
    std::optional<double> room_m;  ///< least, on the right side of the line, inset taken off
};

/// The conditions of kind place of a season, each read once, to judge every release by that was in force at
/// the release's end and has it in its scope; or one condition, in force or not. Complied at 2 u of room or
/// more, breached at -2 u or less, else it cannot be told. release_start is judged where the doors opened (as
/// `start` has it), release_end and whole_release by the trip's track alone; without one, or with a gap
/// longer than the condition's (else the usual) interval, they cannot be told. `line` as the ledger has the
/// release. A condition whose members do not read finds nothing. The ledger must outlive it.
class PlaceConditions {
 public:
    explicit PlaceConditions(const Ledger& ledger);
    PlaceConditions(const Ledger& ledger, const Condition& only);

    [[nodiscard]] std::vector<PlaceFinding> judge(const LedgerLine& line, const ReleasePlace& start,
                                                  const Checked<TripTrack>* track) const;

 private:
    /// One condition's members as judging needs them.
    struct Read {
        const Condition* condition = nullptr;
        AppliesTo applies;
        std::function<double(EastNorth)> room;  ///< empty: it names a place that the book does not have
        std::string test;
        double longest_gap_s = 0;
        std::optional<double> position_u_m_max;
    };
    void read(const Condition& condition);

    const Ledger& ledger_;
    bool in_force_alone_;
    std::vector<Read> read_;
};

}  // namespace spoilbook
