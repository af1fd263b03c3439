// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "model/turbidity/logger_layout.h"
#include "model/turbidity/logger_time.h"

namespace spoilbook {

/// What the heads of a table name as parts of a time: a year and a day of it, or a year, month and day, and
/// hours, minutes and seconds; of a table with whole dates the hours, minutes and seconds alone.
TimeParts parts_named(const std::vector<std::string_view>& heads);

/// Whether the parts make up a date.
[[nodiscard]] inline bool have_date(const TimeParts& parts) {
    return parts.year && (parts.day_of_year || (parts.month && parts.day));
}

/// The date that the fields of a row make up, and its time of day where hours, or a part of the day of the
/// year, say one, to the nearest second. Day 1 of a year is 1 January. Nothing where a part is no number, or
/// the calendar has no such day.
std::optional<LoggerTime> parts_time(const std::vector<std::string_view>& fields, const TimeParts& parts);

/// Gives a date the hours, minutes and seconds of the row; false where one is no number of its kind.
bool add_clock_parts(const std::vector<std::string_view>& fields, const TimeParts& parts, LoggerTime& time);

/// Gives a time of day the half of the row, AM or PM; false where it is neither, or the hour is none of a
/// twelve-hour clock.
bool add_half_part(const std::vector<std::string_view>& fields, const TimeParts& parts, LoggerTime& time);

/// The parts of a row without heads that is likely to begin with a year and the day of it, as data loggers
/// write arrays: a year, and beside it a number up to 366.
std::optional<TimeParts> likely_parts(const std::vector<std::string_view>& fields);

}  // namespace spoilbook
