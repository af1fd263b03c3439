// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/working_days.h"

#include <catch2/catch.hpp>

#include "model/unit/time_text.h"

using namespace spoilbook;

namespace {

const Zone zone = *Zone::named("Pacific/Auckland");

std::string due(const char* at, double n, const char* unit, const char* not_working = "") {
    const auto found = due_after(zone, *parse_instant(at, zone), n, unit, not_working_from(not_working));
    return found ? instant_text(*found, zone) : "never";
}

constexpr const char* summer = R"({"weekends": true, "dates": ["2026-02-06"], "yearly": ["12-20..01-10"]})";

}  // namespace

TEST_CASE("working days count from the day after and end at midnight of the last") {
    // Monday 2 February 2026; Friday the 6th is a holiday.
    CHECK(due("2026-02-02T15:00", 1, "working_days", summer) == "2026-02-04T00:00:00+13:00");
    CHECK(due("2026-02-02T15:00", 4, "working_days", summer) == "2026-02-10T00:00:00+13:00");
    CHECK(due("2026-02-02T15:00", 4, "working_days") == "2026-02-07T00:00:00+13:00");
}

TEST_CASE("the days about the new year are left out") {
    // Friday 19 December 2025; the next working day is Monday 12 January.
    CHECK(due("2025-12-19T09:00", 1, "working_days", summer) == "2026-01-13T00:00:00+13:00");
}

TEST_CASE("hours are time, days and months stand on the wall clock") {
    // Clocks go back on 5 April 2026.
    CHECK(due("2026-04-04T20:00", 24, "hours") == "2026-04-05T19:00:00+12:00");
    CHECK(due("2026-04-04T20:00", 1, "days") == "2026-04-05T20:00:00+12:00");
    CHECK(due("2026-01-31T20:00", 1, "months") == "2026-02-28T20:00:00+13:00");
}

TEST_CASE("where no day is a working day nothing is ever due") {
    CHECK(due("2026-04-04T20:00", 1, "working_days", R"({"yearly": ["01-01..12-31"]})") == "never");
    CHECK(due("2026-04-04T20:00", 1, "fortnights") == "never");
}
