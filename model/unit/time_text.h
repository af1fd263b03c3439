// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "model/unit/zone.h"

namespace spoilbook {

/// Reads ISO 8601: 2025-09-28T01:30[:15[.250]] with Z or ±hh[:mm], 'T' or one space between. Without an
/// offset it is read in `zone`, and refused where that wall time happens twice or never. More than whole
/// milliseconds, second 60 and years outside 1..9999 are refused. 24:00 is the next midnight.
Checked<Instant> parse_instant(std::string_view text, const Zone& zone);

/// As parse_instant, and a bare day (2025-09-28) is its first instant in `zone`.
Checked<Instant> parse_instant_or_day(std::string_view text, const Zone& zone);

/// Reads 2025-09-28.
Checked<Day> parse_day(std::string_view text);

/// 2025-09-28T01:30:15+12:00; milliseconds only where there are any. Reads back as the same instant.
std::string instant_text(Instant at, const Zone& zone);
/// The same of a time by which something is due: midnight is 24:00 of the day that it ends
/// (2025-12-12T24:00:00+13:00). Reads back as the same instant.
std::string due_text(Instant due, const Zone& zone);
/// The day that ends at this instant; nothing where it is no midnight of the zone.
std::optional<Day> day_ending(Instant at, const Zone& zone);
std::string day_text(Day day);
/// 2025-09
std::string month_text(Day day);

}  // namespace spoilbook
