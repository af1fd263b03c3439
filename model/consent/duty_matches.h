// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/duty_calendar.h"

namespace spoilbook {

/// Gives each record of what was done by `as_at` to the one time of `condition` that it is for: that whose
/// period or event begins at covers_from, else on its local day, else whose period holds it; with a blank
/// covers_from the earliest that had arisen, or that of a date. A time keeps its earliest record.
void match_done(const Season& season, const Condition& condition, Instant as_at,
                std::vector<DutyTime>& times);

}  // namespace spoilbook
