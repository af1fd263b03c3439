// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/duty_calendar.h"

namespace spoilbook {

/// The duties that a period's return tells, as they stand at the as-at, in order of their due times: those
/// that arose, were due or were done in the period, and those that arose before its end and are still open.
/// What was nil is left out.
/// A condition that does not read is refused in `unread`.
std::vector<DutyTime> duties_in(const Ledger& ledger, const Period& period, Instant as_at, Refusals& unread);

}  // namespace spoilbook
