// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/duty_calendar.h"

namespace spoilbook {

/// How a duty stands, in the one word that screens, lines and printed pages have for it: coming, due,
/// overdue, done, done late, nil.
std::string duty_word(DutyState state, bool late);
std::string duty_word(const DutyTime& time);

}  // namespace spoilbook
