// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/unit/zone.h"

namespace spoilbook {

/// True for a day that the Gregorian calendar has.
bool exists(Day day);
int days_in_month(int year, int month);
/// n days later (earlier where negative).
Day plus_days(Day day, int n);
/// n months later; a day that the month lacks becomes its last (31 January + 1 = 28 or 29 February).
Day plus_months(Day day, int n);
/// 1 Monday … 7 Sunday (ISO 8601).
int iso_weekday(Day day);
/// Whole days from b to a.
int days_between(Day a, Day b);

/// `at` moved by n months or days on the local wall clock (negative: back), as consent-rules.md has it for
/// rolling windows: the clock keeps its reading, months clamp.
Instant shift_months(const Zone& zone, Instant at, int n);
Instant shift_days(const Zone& zone, Instant at, int n);

/// The calendar period that holds `at`, cut at local midnights.
Period day_holding(const Zone& zone, Instant at);
Period iso_week_holding(const Zone& zone, Instant at);
Period month_holding(const Zone& zone, Instant at);
Period year_holding(const Zone& zone, Instant at);
/// The year that begins each time at MM-DD (29 February begins on 28 February in common years).
Period year_from_holding(const Zone& zone, Instant at, int month, int day);

/// [first of the month, first of the next) for YYYY-MM; refused where it is not one.
Checked<Period> month_named(const Zone& zone, const std::string& year_month);

}  // namespace spoilbook
