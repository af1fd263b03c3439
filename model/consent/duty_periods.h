// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/duty.h"
#include "model/consent/window.h"

namespace spoilbook {

/// The periods of a cycle that touch `span`, cut by it, in order: months and quarters of the calendar, and
/// years from MM-DD, beginning at local midnights.
std::vector<Period> duty_periods(const Zone& zone, DutyWhen cycle, const std::string& year_starts,
                                 const Period& span);

}  // namespace spoilbook
