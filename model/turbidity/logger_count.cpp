// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/logger_count.h"

#include <cmath>

#include "model/turbidity/logger_lines.h"
#include "model/unit/calendar.h"

namespace spoilbook {

std::optional<double> logger_count(std::string_view text, DateOrder order) {
    auto number = logger_number(text, '.');
    if (!number) number = logger_number(text, ',');
    if (!number) return std::nullopt;
    const double low = order == DateOrder::unix_s ? 8.9e8 : order == DateOrder::unix_ms ? 8.9e11 : 30000;
    const double high = order == DateOrder::unix_s ? 3.1e9 : order == DateOrder::unix_ms ? 3.1e12 : 60000;
    return *number >= low && *number <= high ? number : std::nullopt;
}

std::optional<LoggerTime> counted_time(std::string_view text, DateOrder order) {
    const auto count = logger_count(text, order);
    if (!count) return std::nullopt;
    // Day 1 is 1900-01-01 with a 29 February 1900 that never was: from March 1900 on day 0 is 1899-12-30.
    const auto ms = order == DateOrder::unix_ms  ? std::llround(*count)
                    : order == DateOrder::unix_s ? std::llround(*count * 1000)
                                                 : std::llround(*count * 86400) * ms_per_second;
    const Day from = order == DateOrder::excel ? Day{1899, 12, 30} : Day{1970, 1, 1};
    const Day day = plus_days(from, static_cast<int>(ms / ms_per_day));
    const auto rest = static_cast<int>(ms % ms_per_day);
    LoggerTime time;
    time.first = day.year;
    time.second = day.month;
    time.third = day.day;
    time.year_first = time.has_date = time.has_clock = true;
    time.hour = rest / static_cast<int>(ms_per_hour);
    time.minute = rest / static_cast<int>(ms_per_minute) % 60;
    time.second_of_minute = rest / static_cast<int>(ms_per_second) % 60;
    time.millisecond = rest % static_cast<int>(ms_per_second);
    if (order != DateOrder::excel) time.offset_s = 0;
    return time;
}

}  // namespace spoilbook
