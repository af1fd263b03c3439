// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/quantity.h"

namespace spoilbook {

enum class DutyWhen { month, quarter, year, event, amount, date };

/// What a condition of kind duty asks for (docs/conditions.md).
struct Duty {
    std::string what;  ///< report, return, notice, survey, sample, calibrate, plan
    DutyWhen when = DutyWhen::date;
    std::string event;          ///< of an event: which kind, or "any"
    Quantity counted;           ///< of an amount: what counts, over the whole term
    double every = 0;           ///< of an amount: the step, in its measure
    std::optional<Instant> on;  ///< of a date
    bool on_whole_day = false;  ///< the date was given as a day: it lasts until 24:00
    std::optional<double> due_n;
    std::string due_unit;   ///< hours, days, working_days, months
    std::string due_after;  ///< in the consent's words; "end": of an event its end
    bool nil_required = false;
    bool blocks_dredge = false, blocks_release = false;
    Scope scope;
};

/// Reads the members of a condition of kind duty. They were checked when the condition entered the book; what
/// still does not read is refused.
Checked<Duty> duty_from(const Condition& condition, const Zone& zone);

}  // namespace spoilbook
