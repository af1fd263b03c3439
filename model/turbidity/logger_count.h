// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>

#include "model/turbidity/logger_time.h"

namespace spoilbook {

/// Times that are one number, in the order in which they are told apart.
inline constexpr std::array counted_orders{DateOrder::unix_s, DateOrder::unix_ms, DateOrder::excel};

/// The number, with a point or a comma, where it is a likely time of that count: seconds or milliseconds
/// since 1970 (UTC) of 1998 to 2068, or the days of a spreadsheet (day 1 being 1900-01-01) of 1982 to 2064.
std::optional<double> logger_count(std::string_view text, DateOrder order);

/// The day and time of day that a count says: of unix_s and unix_ms in UTC, of excel on the logger's own
/// clock, to the nearest second, for a spreadsheet's digits seldom say a second exactly.
/// Nothing for what is no such count.
std::optional<LoggerTime> counted_time(std::string_view text, DateOrder order);

}  // namespace spoilbook
