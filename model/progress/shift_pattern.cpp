// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/shift_pattern.h"

#include <set>

#include "model/unit/calendar.h"

namespace spoilbook {

std::optional<ShiftPattern> shift_pattern(const SeasonHours& hours_of, const Zone& zone, Day from, Day to) {
    Periods worked;
    std::set<int> opened_on;
    for (const auto& shift : hours_of.shifts) {
        const int day = days_between(zone.day_of(shift.time.from), from);
        if (day < 0 || day > days_between(to, from)) continue;
        worked.push_back(shift.time);
        opened_on.insert(day);
    }
    if (opened_on.empty()) return std::nullopt;
    ShiftPattern pattern;
    pattern.days = static_cast<int>(opened_on.size());
    pattern.hours_a_day = hours(joined(std::move(worked))) / pattern.days;
    pattern.days_a_week = 7.0 * pattern.days / (days_between(to, from) + 1);
    return pattern;
}

}  // namespace spoilbook
