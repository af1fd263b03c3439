// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/duty_calendar.h"

namespace spoilbook {

/// The days that a due time was counted over, to be read: n working days after `after`, the last being
/// `last`.
struct DueDays {
    int n = 0;
    Day after;
    Day last;
    std::vector<Day> not_working;  ///< passed over, ascending
    /// The last year whose dates the consent lists, where `last` lies after it: a holiday of the next may
    /// fall into the time, and it would be due later.
    std::optional<int> listed_to;
};

/// How the due time of a duty in working days came about; nothing for any other. It explains `time.due`, and
/// counts nothing anew.
std::optional<DueDays> due_days(const DutyTime& time, const Zone& zone);

/// "holidays are listed to 2026 only"; empty where the list goes on, or none is.
std::string listed_text(const DutyTime& time, const Zone& zone);

/// Local days from the as-at to the last day in time: 0 on that day, negative after it.
int days_left(Instant due, const Zone& zone, Instant as_at);
/// The same of a duty; nothing without a due time.
std::optional<int> days_left(const DutyTime& time, const Zone& zone, Instant as_at);

}  // namespace spoilbook
