// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/unit/calendar.h"

#include <absl/time/civil_time.h>

#include <algorithm>

namespace spoilbook {

namespace {

absl::CivilDay civil(Day day) {
    return absl::CivilDay(day.year, day.month, day.day);
}
Day day_from(absl::CivilDay day) {
    return {static_cast<int>(day.year()), day.month(), day.day()};
}

/// The same time of the day that `to` makes of the day of `at`.
template <class To>
Instant move_day(const Zone& zone, Instant at, To to) {
    WallTime wall = zone.wall(at);
    wall.day = to(wall.day);
    return zone.instant(wall);
}

Day clamped(int year, int month, int day) {
    return {year, month, std::min(day, days_in_month(year, month))};
}

}  // namespace

int days_in_month(int year, int month) {
    const absl::CivilMonth first(year, month);
    return static_cast<int>(absl::CivilDay(first + 1) - absl::CivilDay(first));
}

bool exists(Day day) {
    return day.year >= 1 && day.year <= 9999 && day.month >= 1 && day.month <= 12 && day.day >= 1 &&
           day.day <= days_in_month(day.year, day.month);
}

Day plus_days(Day day, int n) {
    return day_from(civil(day) + n);
}

Day plus_months(Day day, int n) {
    const absl::CivilMonth month = absl::CivilMonth(day.year, day.month) + n;
    return clamped(static_cast<int>(month.year()), month.month(), day.day);
}

int iso_weekday(Day day) {
    return static_cast<int>(absl::GetWeekday(civil(day))) + 1;
}

int days_between(Day a, Day b) {
    return static_cast<int>(civil(a) - civil(b));
}

Instant shift_months(const Zone& zone, Instant at, int n) {
    return move_day(zone, at, [n](Day day) { return plus_months(day, n); });
}

Instant shift_days(const Zone& zone, Instant at, int n) {
    return move_day(zone, at, [n](Day day) { return plus_days(day, n); });
}

Period day_holding(const Zone& zone, Instant at) {
    const Day day = zone.day_of(at);
    return {zone.day_start(day), zone.day_start(plus_days(day, 1))};
}

Period iso_week_holding(const Zone& zone, Instant at) {
    const Day day = zone.day_of(at);
    const Day monday = plus_days(day, 1 - iso_weekday(day));
    return {zone.day_start(monday), zone.day_start(plus_days(monday, 7))};
}

Period month_holding(const Zone& zone, Instant at) {
    const Day day = zone.day_of(at);
    const Day first{day.year, day.month, 1};
    return {zone.day_start(first), zone.day_start(plus_months(first, 1))};
}

Period year_holding(const Zone& zone, Instant at) {
    return year_from_holding(zone, at, 1, 1);
}

Period year_from_holding(const Zone& zone, Instant at, int month, int day) {
    const int year = zone.day_of(at).year;
    const auto start = [&](int y) { return zone.day_start(clamped(y, month, day)); };
    if (at < start(year)) return {start(year - 1), start(year)};
    return {start(year), start(year + 1)};
}

Checked<Period> month_named(const Zone& zone, const std::string& year_month) {
    const auto digit = [&](std::size_t i) { return year_month[i] >= '0' && year_month[i] <= '9'; };
    const bool shaped = year_month.size() == 7 && digit(0) && digit(1) && digit(2) && digit(3) &&
                        year_month[4] == '-' && digit(5) && digit(6);
    const int year = shaped ? std::stoi(year_month.substr(0, 4)) : 0;
    const int month = shaped ? std::stoi(year_month.substr(5)) : 0;
    if (!exists({year, month, 1})) {
        return Refusal{"not-a-month", "", "\"" + year_month + "\" is not a month", "write it as 2025-11"};
    }
    const Day first{year, month, 1};
    return Period{zone.day_start(first), zone.day_start(plus_months(first, 1))};
}

}  // namespace spoilbook
