// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/work_days.h"

#include <algorithm>

#include "model/unit/calendar.h"

namespace spoilbook {

namespace {

/// Adds the hours of [from, to) to the days that it crosses.
void add_hours(std::vector<WorkDay>& days, const Zone& zone, Instant from, Instant to) {
    for (Day day = zone.day_of(from); zone.day_start(day) < to; day = plus_days(day, 1)) {
        const int place = days_between(day, days.front().date);
        if (place < 0 || place >= static_cast<int>(days.size())) continue;
        const Instant start = std::max(from, zone.day_start(day));
        const Instant end = std::min(to, zone.day_start(plus_days(day, 1)));
        days[static_cast<std::size_t>(place)].filling_h +=
            static_cast<double>(end - start) / static_cast<double>(ms_per_hour);
    }
}

}  // namespace

std::vector<WorkDay> work_days(const Ledger& ledger, Instant as_at) {
    std::vector<WorkDay> days;
    const Zone& zone = ledger.season().zone;
    const Day today = zone.day_of(as_at + 1);
    const auto& lines = ledger.dredged();
    if (lines.empty()) return days;
    for (Day day = lines.front().day; day < today; day = plus_days(day, 1))
        days.push_back({day});
    if (days.empty()) return days;
    for (const auto& line : lines) {
        if (line.at > as_at) break;
        if (line.load->loading_start && *line.load->loading_start < line.at)
            add_hours(days, zone, *line.load->loading_start, line.at);
        const int place = days_between(line.day, days.front().date);
        if (place >= static_cast<int>(days.size())) continue;
        if (const auto amount = dredged_amount(line, "", Measure::in_situ_m3))
            days[static_cast<std::size_t>(place)].in_situ_m3 += amount->value;
    }
    return days;
}

}  // namespace spoilbook
