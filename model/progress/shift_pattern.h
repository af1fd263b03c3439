// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/progress/shift_hours.h"

namespace spoilbook {

/// How long and how often was worked, by the shifts that were opened.
struct ShiftPattern {
    double hours_a_day = 0;  ///< shift hours of a day on which a shift was opened, 0 to 24
    double days_a_week = 0;  ///< days on which one was opened, 0 to 7
    int days = 0;            ///< such days in all
};

/// Of the local days `from` to `to`, both included. A shift belongs to the day on which it was opened, also
/// where it goes on past midnight; hours of two shifts at one time count once. Nothing where none was opened.
/// Common practice, no source.
std::optional<ShiftPattern> shift_pattern(const SeasonHours& hours, const Zone& zone, Day from, Day to);

}  // namespace spoilbook
