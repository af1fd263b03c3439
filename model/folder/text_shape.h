// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

namespace spoilbook {

/// A day of every year: 09-01; 02-29 is one.
bool is_month_day(std::string_view text);
/// Days of every year, both whole: 09-01..10-15, 12-20..01-10.
bool is_month_day_span(std::string_view text);
/// A time of the wall clock: 06:00; 24:00 is one.
bool is_clock_time(std::string_view text);
/// [a, b) on the wall clock: 20:00..06:00.
bool is_clock_span(std::string_view text);

}  // namespace spoilbook
