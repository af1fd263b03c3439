// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/duty_calendar.h"

namespace spoilbook {

/// The duties that a period's return tells, as they stand at the as-at, in order of their due times: those
/// due or done in the period, and those due before its end that are still overdue. What was nil is left out.
/// A condition that does not read is refused in `unread`.
std::vector<DutyTime> duties_in(const Ledger& ledger, const Period& period, Instant as_at, Refusals& unread);

}  // namespace spoilbook
