// SPDX-License-Identifier: GPL-3.0-or-later
// Days on which the consent forbids all work, and a season that opens or closes on another day.
#include "model/progress/closed_days.h"

#include <catch2/catch.hpp>

#include "model/progress/forecast.h"
#include "model/unit/calendar.h"
#include "tests/unit/consent/support.h"

using namespace spoilbook;

namespace {

constexpr Day today{2025, 9, 1};  // a Monday

std::vector<Day> days_from_today(int count) {
    std::vector<Day> days;
    for (int i = 0; i < count; ++i)
        days.push_back(plus_days(today, i));
    return days;
}

/// "..##.." a day a sign, today first, # where closed.
std::vector<bool> closed_of(const std::string& signs) {
    std::vector<bool> closed;
    for (const char sign : signs)
        closed.push_back(sign == '#');
    return closed;
}

std::string moved(const std::string& signs, std::optional<int> opens, std::optional<int> closes) {
    auto closed = closed_of(signs);
    const auto day = [](std::optional<int> after) {
        return after ? std::optional(plus_days(today, *after)) : std::nullopt;
    };
    move_season(closed, days_from_today(static_cast<int>(signs.size())), day(opens), day(closes));
    std::string said;
    for (const bool is_closed : closed)
        said += is_closed ? '#' : '.';
    return said;
}

}  // namespace

TEST_CASE("a season that closes on another day is open until then", "[what-if]") {
    CHECK(moved("....###...", {}, {}) == "....###...");
    CHECK(moved("....###...", {}, 5) == ".....##...");
    CHECK(moved("....###...", {}, 2) == "..#####...");
    CHECK(moved("....###...", {}, 8) == "..........");  // after it would open again
    CHECK(moved("....###...", {}, 1) == ".######...");
    // Closed now: it is the closing of the season to come that is moved.
    CHECK(moved("###...##..", {}, 7) == "###....#..");
    // Today is over: what it was stays.
    CHECK(moved(".#########", {}, 3) == "...#######");
}

TEST_CASE("a season that opens on another day is closed until then", "[what-if]") {
    CHECK(moved("###...##..", 5, {}) == "#####.##..");
    CHECK(moved("###...##..", 1, {}) == "#.....##..");
    CHECK(moved("....###...", 8, {}) == "....####..");
    CHECK(moved("....###...", 5, {}) == "....#.....");
    CHECK(moved("....######", 7, {}) == "....###...");
    CHECK(moved("....###...", 3, {}) == "..........");  // before it closes
    CHECK(moved("....###...", 8, 6) == "......##..");
}

TEST_CASE("a season may be supposed where the consent has none", "[what-if]") {
    CHECK(moved("..........", {}, 4) == "....######");
    CHECK(moved("..........", 4, {}) == ".###......");
    CHECK(moved("..........", 6, 4) == "....##....");
    CHECK(moved("..........", 3, 6) == ".##...####");
}

TEST_CASE("a day of rest closes no season", "[what-if]") {
    SmallSeason small;
    Claim claim;
    claim.id = small.id();
    claim.planned_in_situ_m3 = 4900;
    small.season.claims.add(claim);
    small.condition_of("time", R"({"mode":"forbid","weekdays":["sun"]})");
    small.condition_of("time", R"({"mode":"forbid","dates":["09-20..09-23"]})");
    const auto closed = closed_days(small.season, days_from_today(28));
    CHECK(closed.rest[6]);
    CHECK_FALSE(closed.season[6]);
    CHECK(closed.season[19]);
    CHECK(closed.at(6));
    CHECK(closed.at(19));
    CHECK_FALSE(closed.at(5));
    // 100 m³ a day, Sundays too, for 28 days before: 2100 are left.
    for (int i = -28; i < 0; ++i) {
        Load load;
        load.id = small.id();
        load.stated_in_situ_m3 = 100;
        load.loading_end = small.season.zone.day_start(plus_days(today, i)) + 12 * ms_per_hour;
        small.season.loads.add(load);
    }
    const Ledger ledger(small.season);
    ForecastAsked asked;
    asked.as_at = small.season.zone.day_start(today) - 1;
    asked.draws = 100;
    const auto made = forecast(ledger, asked);
    CHECK(made.season_closes == Day{2025, 9, 20});
    CHECK(made.target.p50 == Day{2025, 9, 27});  // six days, six, five to the 19th, four from the 24th on
    asked.supposed.season_closes = Day{2025, 9, 22};
    const auto later = forecast(ledger, asked);
    CHECK(later.season_closes == Day{2025, 9, 22});
    CHECK(later.target.p50 == Day{2025, 9, 26});
}

TEST_CASE("work that is allowed on weekdays of a season rests on Sundays and ends with the season",
          "[what-if]") {
    SmallSeason small;
    small.condition_of("time", R"({"mode":"allow","dates":["04-01..09-12"],
        "weekdays":["mon","tue","wed","thu","fri","sat"]})");
    const auto closed = closed_days(small.season, days_from_today(21));
    for (std::size_t i = 0; i < 21; ++i) {
        CAPTURE(i);
        CHECK(closed.season[i] == (i > 11));
        CHECK(closed.rest[i] == (i == 6));
    }
}
