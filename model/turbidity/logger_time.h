// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>

#include "model/turbidity/logger_layout.h"
#include "model/unit/zone.h"

namespace spoilbook {

/// A date and time of day in the words of some logger, before it is known which number is the month.
struct LoggerTime {
    int first = 0, second = 0, third = 0;  ///< of the date, in the order of the text
    bool first_padded = false;             ///< the first has two digits: it may be a year
    bool year_first = false;               ///< the first is the year: no other order is possible
    bool month_named = false;              ///< the month was a word: `second` is it, `first` the day
    bool has_date = false, has_clock = false;
    int hour = 0, minute = 0, second_of_minute = 0, millisecond = 0;
    std::optional<int> offset_s;  ///< east of Greenwich, where the text says so
    std::string_view zone_word;   ///< NZST or the like, which says no offset for certain; in the text
};

/// Reads 2025-09-28 01:30:15.250, 28/9/25 1:30 PM, 28.09.2025, 20250928T0130, 2025-271, 28 Sep 2025, 01:30
/// and the like; Z, UTC, GMT, ±hh[:mm] or the letters of a zone may follow. Nothing for anything else.
std::optional<LoggerTime> logger_time(std::string_view text);

/// A time of day in a column of its own, where it may stand without a colon: 14:30, 1430, 930, 14.30.
std::optional<LoggerTime> logger_clock(std::string_view text);
/// One without a colon alone: "14.30" or "1430".
std::optional<LoggerTime> bare_clock(std::string_view text);

/// The date under an order; nothing where the calendar has no such day. Years of two digits are 1970 to 2069.
std::optional<Day> day_of(const LoggerTime& time, DateOrder order);

}  // namespace spoilbook
