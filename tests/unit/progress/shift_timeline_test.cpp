// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/shift_timeline.h"

#include <catch2/catch.hpp>

#include "model/progress/shift_sheet.h"
#include "tests/unit/progress/a_shift.h"

using namespace spoilbook;
using namespace spoilbook::tests;
using Catch::Matchers::WithinAbs;

namespace {

std::vector<ShiftSpan> gaps_of(const ShiftTimeline& line) {
    std::vector<ShiftSpan> gaps;
    for (const auto& span : line.spans) {
        if (span.kind == SpanKind::gap) gaps.push_back(span);
    }
    return gaps;
}

// Twelve hours: a delay of 30 min, digging until 120, nothing until 180, a delay until 240 that digging
// overlaps from 210, digging until 720.
Season a_day() {
    Season season;
    season.shifts.add(a_shift(1, 0, 720));
    season.delays.add(a_delay(10, 0, 30));
    season.stations.add(a_station(2, 0, 0, 0, 30));
    season.loads.add(a_load(20, 30, 120));
    season.delays.add(a_delay(11, 180, 240));
    season.loads.add(a_load(21, 210, 720));
    return season;
}

}  // namespace

TEST_CASE("an hour that neither digging nor a delay accounts for is one gap", "[shift_timeline]") {
    const Season season = a_day();
    const auto line = shift_timeline(season, season.shifts.rows().front(), shift_minute(2000));
    const auto gaps = gaps_of(line);
    REQUIRE(gaps.size() == 1);
    CHECK(gaps[0].time == Period{shift_minute(120), shift_minute(180)});
    CHECK_THAT(line.unlogged_h, WithinAbs(1, 1e-12));
    CHECK_THAT(line.delayed_h, WithinAbs(1.5, 1e-12));
    // 90 min and 510 min, less the 30 min that a delay says were not dug.
    CHECK_THAT(line.dug_h, WithinAbs(9.5, 1e-12));
}

TEST_CASE("a barge change of under ten minutes is no gap", "[shift_timeline]") {
    Season season = a_day();
    season.loads.add(a_load(22, 120, 171));
    const auto line = shift_timeline(season, season.shifts.rows().front(), shift_minute(2000));
    CHECK(gaps_of(line).empty());
}

TEST_CASE("a running shift is shown until now, and what goes on is open", "[shift_timeline]") {
    Season season;
    season.shifts.add(a_shift(1, 0, std::nullopt));
    season.stations.add(a_station(2, 0, 0, 0, -30));
    season.loads.add(a_load(20, -20, std::nullopt));
    const auto line = shift_timeline(season, season.shifts.rows().front(), shift_minute(90));
    CHECK(line.time == Period{shift_minute(0), shift_minute(90)});
    REQUIRE(line.spans.size() == 2);
    CHECK(line.spans[0].time.from == shift_minute(0));
    CHECK(line.spans[0].open);
    CHECK(line.spans[1].open);
    CHECK_THAT(line.dug_h, WithinAbs(1.5, 1e-12));
}

TEST_CASE("a shift that was left open is shown for a day", "[shift_timeline]") {
    Season season;
    season.shifts.add(a_shift(1, 0, std::nullopt));
    const auto line = shift_timeline(season, season.shifts.rows().front(), shift_minute(100'000));
    CHECK(line.time.to - line.time.from == ms_per_day);
}

TEST_CASE("the sheet holds what the signature covers and says what is blank", "[shift_sheet]") {
    Season season = a_day();
    season.trips.add(a_trip(30, 20, 130, std::nullopt));
    season.loads.add(a_load(23, 800, 900));
    const auto lines = shift_sheet(season, season.shifts.rows().front());
    std::vector<std::string> labels;
    for (const auto& line : lines)
        labels.push_back(line.label);
    CHECK(labels == std::vector<std::string>{"ST-2", "D-10", "D-11", "L-20", "L-21", "T-30"});
    CHECK(lines.back().missing == std::vector<std::string>{"tug", "returned"});
}
