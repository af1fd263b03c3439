// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "model/unit/calendar.h"
#include "model/unit/time_text.h"

using namespace spoilbook;

namespace {

Instant at(const char* text, const Zone& zone) {
    return *parse_instant(text, zone);
}

}  // namespace

TEST_CASE("a rolling month back from a day that the month lacks is its last day", "[calendar]") {
    CHECK(plus_months({2024, 2, 29}, -12) == Day{2023, 2, 28});
    CHECK(plus_months({2025, 3, 31}, -1) == Day{2025, 2, 28});
    CHECK(plus_months({2024, 3, 31}, -1) == Day{2024, 2, 29});
    CHECK(plus_months({2025, 1, 31}, 13) == Day{2026, 2, 28});
    CHECK(plus_months({2025, 5, 31}, -3) == Day{2025, 2, 28});
}

TEST_CASE("weeks begin on the days that ISO 8601 says", "[calendar]") {
    // ISO 8601:2004, 3.2.2 and its examples: 2008-12-29 is the Monday of 2009-W01, 1985-04-12 a Friday. MEM.
    CHECK(iso_weekday({2008, 12, 29}) == 1);
    CHECK(iso_weekday({1985, 4, 12}) == 5);
    CHECK(iso_weekday({2000, 1, 1}) == 6);
    const Zone utc = Zone::utc();
    const auto week = iso_week_holding(utc, at("2010-01-03T12:00", utc));  // Sunday of 2009-W53
    CHECK(day_text(utc.day_of(week.from)) == "2009-12-28");
    CHECK(day_text(utc.day_of(week.to)) == "2010-01-04");
}

TEST_CASE("a day over a clock change is one day of 23 or 25 hours", "[calendar]") {
    const Zone zone = *Zone::named("Pacific/Auckland");
    const auto spring = day_holding(zone, at("2025-09-28T12:00", zone));
    CHECK(spring.to - spring.from == 23 * ms_per_hour);
    const auto autumn = day_holding(zone, at("2026-04-05T12:00", zone));
    CHECK(autumn.to - autumn.from == 25 * ms_per_hour);
}

TEST_CASE("thirty days before ten o'clock is ten o'clock, also across a clock change", "[calendar]") {
    const Zone zone = *Zone::named("Pacific/Auckland");
    CHECK(shift_days(zone, at("2025-10-10T10:00", zone), -30) == at("2025-09-10T10:00", zone));
    CHECK(shift_months(zone, at("2026-04-30T10:00", zone), -1) == at("2026-03-30T10:00", zone));
}

TEST_CASE("a wall time that does not exist takes the offset before the gap, a double one the earlier",
          "[calendar]") {
    const Zone zone = *Zone::named("Pacific/Auckland");
    CHECK(shift_days(zone, at("2025-10-28T02:30", zone), -30) == at("2025-09-28T02:30+12:00", zone));
    CHECK(shift_days(zone, at("2026-05-05T02:30", zone), -30) == at("2026-04-05T02:30+13:00", zone));
}

TEST_CASE("a year that begins on a day holds that day's first instant and not the next year's",
          "[calendar]") {
    const Zone zone = *Zone::named("Pacific/Auckland");
    const auto first = at("2025-07-01T00:00", zone);
    CHECK(year_from_holding(zone, first, 7, 1).from == first);
    CHECK(year_from_holding(zone, first - 1, 7, 1).to == first);
    CHECK(year_from_holding(zone, at("2025-02-28T00:00", zone), 2, 29).from == at("2025-02-28T00:00", zone));
}

TEST_CASE("months so cut neither overlap nor leave gaps", "[calendar]") {
    const Zone zone = *Zone::named("America/Santiago");  // clocks skip midnight there
    Instant next = month_named(zone, "2020-01")->from;
    for (int i = 0; i < 480; ++i) {
        const auto month = month_holding(zone, next);
        CHECK(month.from == next);
        CHECK(month.to > month.from);
        CHECK(month_holding(zone, month.to - 1) == month);
        next = month.to;
    }
}

TEST_CASE("what is no month is refused", "[calendar]") {
    for (const char* text : {"2025", "2025-13", "2025-00", "25-01", "2025-1", "2025-011", "2025/01"}) {
        CHECK(!month_named(Zone::utc(), text));
    }
}

TEST_CASE("a wall time that happens twice has a later instant, half an hour later where the clocks go so") {
    // Lord Howe Island: clocks go back by half an hour on 6 April 2025 at 2:00, UTC+11 to UTC+10:30.
    const Zone zone = *Zone::named("Australia/Lord_Howe");
    WallTime wall;
    wall.day = {2025, 4, 6};
    wall.hour = 1;
    wall.minute = 45;
    CHECK(zone.later_instant(wall) - zone.instant(wall) == ms_per_hour / 2);
    wall.hour = 12;
    CHECK(zone.later_instant(wall) == zone.instant(wall));
}

TEST_CASE("the next change of the clocks is the instant itself, and after it comes another") {
    const Zone zone = *Zone::named("Pacific/Auckland");
    const Instant midwinter = *parse_instant("2025-07-01T00:00", zone);
    const Instant change = *parse_instant("2025-09-28T03:00+13:00", zone);
    CHECK(zone.next_change(midwinter) == change);
    CHECK(zone.next_change(change - 1) == change);
    CHECK(zone.next_change(change) == parse_instant("2026-04-05T02:00+12:00", zone).value());
    CHECK(!Zone::utc().next_change(midwinter));
}
