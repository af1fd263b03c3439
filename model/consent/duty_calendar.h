// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/duty.h"
#include "model/consent/ledger.h"

namespace spoilbook {

enum class DutyState {
    coming,   ///< has not arisen by the as-at
    due,      ///< has arisen; its time has not run out, or it has none
    overdue,  ///< the as-at is past `due`, and it is not done
    done,     ///< recorded as done by the as-at, in time or late
    nil       ///< nothing happened in its period, and then nothing is asked
};

std::string text(DutyState state);

/// One time that a duty is to be done. Points into the season, which must outlive it.
struct DutyTime {
    const Condition* condition = nullptr;  ///< the version in force when it arises
    const Consent* consent = nullptr;
    Duty duty;
    std::optional<Instant> arises;  ///< nothing: a step of an amount that is not reached yet
    std::optional<Period> covers;   ///< its period; since the step before; the event; nothing for a date
    std::optional<Instant> due;     ///< the last instant in time; nothing: the condition sets none
    DutyState state = DutyState::coming;
    const DutyDone* done = nullptr;
    const Event* event = nullptr;
    std::optional<double> step;   ///< of an amount: the total at which it arises, in its measure
    std::optional<double> to_go;  ///< of one not reached yet: what is missing by what has been released
    std::size_t unknown = 0;      ///< of an amount: loads that no method can value, not zero

    [[nodiscard]] bool late() const { return done != nullptr && due && *done->done_at > *due; }
};

/// Every time of every duty of the season, in the order of the conditions and then of time: periods from the
/// consent's commencement (else the condition's `from`, else the first release) to a year past the as-at, cut
/// by the consent's span; steps of an amount that a release reached, and the one next; events and dates.
/// Pure: what happened after `as_at` does not count. A condition that does not read is left out and refused.
std::vector<DutyTime> duty_calendar(const Ledger& ledger, Instant as_at, Refusals* refusals = nullptr);
/// The same of one condition of kind duty.
std::vector<DutyTime> duty_times(const Ledger& ledger, const Condition& condition, Instant as_at,
                                 Refusals* refusals = nullptr);

}  // namespace spoilbook
