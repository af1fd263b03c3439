// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/duty_periods.h"

#include <algorithm>

#include "model/unit/calendar.h"

namespace spoilbook {

namespace {

Period quarter_holding(const Zone& zone, Instant at) {
    Day first = zone.day_of(at);
    first.month = (first.month - 1) / 3 * 3 + 1;
    first.day = 1;
    return {zone.day_start(first), zone.day_start(plus_months(first, 3))};
}

Period holding(const Zone& zone, DutyWhen cycle, const MonthDay& year_starts, Instant at) {
    if (cycle == DutyWhen::month) return month_holding(zone, at);
    if (cycle == DutyWhen::quarter) return quarter_holding(zone, at);
    return year_from_holding(zone, at, year_starts.month, year_starts.day);
}

}  // namespace

std::vector<Period> duty_periods(const Zone& zone, DutyWhen cycle, const std::string& year_starts,
                                 const Period& span) {
    std::vector<Period> periods;
    const MonthDay first = month_day(year_starts);
    for (Instant at = span.from; at < span.to;) {
        const Period whole = holding(zone, cycle, first, at);
        periods.push_back({std::max(whole.from, span.from), std::min(whole.to, span.to)});
        at = whole.to;
    }
    return periods;
}

}  // namespace spoilbook
