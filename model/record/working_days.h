// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "model/unit/zone.h"

namespace spoilbook {

/// The days on which a consent's working days do not count.
struct NotWorking {
    bool weekends = false;  ///< Saturdays and Sundays
    std::vector<Day> dates;
    /// month · 100 + day, both days whole; the second before the first wraps the year
    std::vector<std::pair<int, int>> yearly;

    [[nodiscard]] bool has(Day day) const;
    /// The year of the last of `dates`, to which holidays that move are known; nothing where none is listed.
    [[nodiscard]] std::optional<int> listed_to() const;
};

/// Reads a consent's `not_working` (docs/conditions.md); empty text: every day is a working day. It was
/// checked when it entered the book; what still does not read is left out.
NotWorking not_working_from(const std::string& json);

/// When something is due that must be done within n of a unit after `at`: hours and parts of days as time,
/// days and months on the wall clock, working_days from the day after, the last one whole (until 24:00).
/// Nothing for an unknown unit, or where no working day comes within ten years.
std::optional<Instant> due_after(const Zone& zone, Instant at, double n, const std::string& unit,
                                 const NotWorking& not_working);

}  // namespace spoilbook
