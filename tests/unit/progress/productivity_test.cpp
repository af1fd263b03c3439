// SPDX-License-Identifier: GPL-3.0-or-later
// Published values with how each is known: SEEN its formula or data were seen in the text named; COMP the
// number was computed from them outside this program (shared checks, table 12).
#include "model/progress/productivity.h"

#include <catch2/catch.hpp>

#include "model/progress/pace.h"
#include "tests/unit/progress/a_shift.h"

using namespace spoilbook;
using namespace spoilbook::tests;
using Catch::Matchers::WithinAbs;

namespace {

/// One shift with all of it at one station.
Season a_day(std::int64_t shift_minutes) {
    Season season;
    season.shifts.add(a_shift(1, 0, shift_minutes));
    auto station = a_station(2, 0, 0, 0, 0);
    station.spuds_up = shift_minute(shift_minutes);
    season.stations.add(station);
    Material sand;
    sand.id = id_of(90);
    sand.material = "sand";
    sand.bulking_factor = 1.25;
    sand.bulking_factor_u = 0.05;
    sand.fill_factor = 0.9;
    season.materials.add(sand);
    return season;
}

Load stated(unsigned char n, std::int64_t start, std::int64_t end, double hopper_m3) {
    Load load = a_load(n, start, end);
    load.material = id_of(90);
    load.stated_hopper_m3 = hopper_m3;
    return load;
}

Productivity made(const Season& season, HoursOver over = HoursOver::all) {
    const Ledger ledger(season);
    const Instant as_at = shift_minute(5000);
    auto found = productivity(ledger, season_hours(season, as_at), as_at, over);
    for (auto& row : found.rows)
        row.loads.clear();  // they point into the ledger
    return found;
}

}  // namespace

TEST_CASE("bucket production fits two handbooks", "[productivity]") {
    // PR-01, data SEEN in a construction textbook's exercise, COMP: 1.5 yd³, 0.9, 25 s, 50 min an hour.
    CHECK_THAT(bucket_production(25, 1.5, 0.9, 50.0 / 60), WithinAbs(162, 0.0005));
    // PR-04, formula SEEN in Komatsu Specifications and Application Handbook, COMP: 3.0 m³, 0.9, 0.75 min,
    // 0.75.
    CHECK_THAT(bucket_production(0.75 * 60, 3.0, 0.9, 0.75), WithinAbs(162, 0.0005));
}

TEST_CASE("a hopper of 400 m³ filled at 162 m³ an hour is 129.6 m³ in situ an hour", "[productivity]") {
    Season season = a_day(720);
    Load load = stated(3, 0, 1, 400);
    // PR-06, COMP: it takes 2.469136 h.
    load.loading_end = *load.loading_start + static_cast<std::int64_t>(2.469136 * ms_per_hour);
    season.loads.add(load);
    const auto row = made(season).rows.front();
    const auto rate = row.per_operating_hour();
    REQUIRE(rate);
    // PR-05, COMP: 162 / 1.25.
    CHECK_THAT(rate->value, WithinAbs(129.6, 0.05));
    // ± 4 % of bulking: exact hours add nothing.
    CHECK_THAT(rate->u(), WithinAbs(129.6 * 0.04, 0.005));
    CHECK_THAT(row.per_shift()->value, WithinAbs(320, 0.05));
}

TEST_CASE("efficiency is operating time over dredging time", "[productivity]") {
    // PR-07, definition SEEN in USACE EI 01D010 chapter 15, COMP: 14.5 h of 22.0 h.
    Season season = a_day(22 * 60);
    season.loads.add(stated(3, 60, 60 + 870, 400));
    CHECK_THAT(100 * made(season).rows.front().efficiency(), WithinAbs(65.9091, 0.00005));
}

TEST_CASE("a load belongs to the shift in which it was full, and to none outside shifts", "[productivity]") {
    Season season = a_day(720);
    season.shifts.add(a_shift(5, 720, 1440));
    season.loads.add(stated(6, 600, 720, 100));  // full as the shift ends
    season.loads.add(stated(7, 700, 800, 200));
    season.loads.add(stated(8, 1500, 1600, 400));
    const auto found = made(season, HoursOver::shift);
    REQUIRE(found.rows.size() == 2);
    CHECK_THAT(found.rows[0].in_situ_m3.value, WithinAbs(80, 0.05));
    CHECK_THAT(found.rows[1].in_situ_m3.value, WithinAbs(160, 0.05));
    CHECK(found.outside_shifts == 1);
}

TEST_CASE("a load that no method can value is unknown and not nothing", "[productivity]") {
    Season season = a_day(720);
    season.loads.add(a_load(6, 0, 100));
    const auto row = made(season).rows.front();
    CHECK(row.unknown == 1);
    CHECK_THAT(row.in_situ_m3.value, WithinAbs(0, 1e-9));
}

TEST_CASE("hours go to buckets by count, volume by count and capacity", "[productivity]") {
    Season season = a_day(720);
    const auto bucket = [&](unsigned char n, const char* name, double capacity) {
        Bucket one;
        one.id = id_of(n);
        one.name = name;
        one.capacity_m3 = capacity;
        season.buckets.add(one);
    };
    bucket(70, "general", 4);
    bucket(71, "rock", 2);
    season.loads.add(stated(6, 0, 120, 500));
    const auto tally = [&](unsigned char n, unsigned char of, double count) {
        Tally line;
        line.id = id_of(n);
        line.load = id_of(6);
        line.station = id_of(2);
        line.bucket = id_of(of);
        line.count = count;
        season.tallies.add(line);
    };
    tally(80, 70, 60);
    tally(81, 71, 40);
    tally(82, 71, 20);
    const Ledger ledger(season);
    const auto rows =
        productivity_by_bucket(ledger, season_hours(season, shift_minute(900)), shift_minute(900));
    REQUIRE(rows.size() == 2);
    // Half of 120 buckets is an hour each: one a minute. The tally counts before what is stated: 360 m³
    // heaped, nine tenths full, are 324 m³ and 259.2 in situ, of which 240 to 120 m³ heaped take 2 to 1.
    CHECK_THAT(rows[0].operating_h, WithinAbs(1, 1e-9));
    CHECK_THAT(*rows[0].cycle_s(), WithinAbs(60, 1e-6));
    CHECK_THAT(rows[0].per_hour()->value, WithinAbs(172.8, 0.0005));
    CHECK_THAT(rows[1].in_situ_m3.value, WithinAbs(86.4, 0.0005));
    // 60 an hour, 4 m³ each, nine tenths full.
    CHECK_THAT(*rows[0].hopper_m3_per_hour(), WithinAbs(216, 0.0005));
    CHECK_THAT(rows[0].in_situ_m3.u() + rows[1].in_situ_m3.u(), WithinAbs(259.2 * 0.04, 0.0005));
}

TEST_CASE("the slowest of dredger, tugs and barges governs", "[pace]") {
    // A load every 110 minutes, a tow of 180: one tug cannot keep up, two barges could.
    Pace two_barges;
    two_barges.tugs = 1;
    two_barges.barges = 3;
    allow(two_barges, 100, 10, 180);
    CHECK(two_barges.governs() == Governs::tugs);
    CHECK_THAT(*two_barges.least(), WithinAbs(1.0 / 3, 1e-9));
    Pace one_barge;
    one_barge.tugs = 1;
    one_barge.barges = 1;
    allow(one_barge, 100, 10, 180);
    CHECK(one_barge.governs() == Governs::barges);
    Pace many;
    many.tugs = 3;
    many.barges = 6;
    allow(many, 100, 10, 180);
    CHECK(many.governs() == Governs::dredger);
}

TEST_CASE("turns are taken from the log, without the delays of others", "[pace]") {
    Season season = a_day(720);
    const auto barge_load = [&](unsigned char n, std::int64_t start, std::int64_t end, unsigned char barge) {
        Load load = stated(n, start, end, 100);
        load.barge = id_of(barge);
        season.loads.add(load);
    };
    barge_load(6, 0, 100, 50);
    barge_load(7, 110, 230, 51);
    barge_load(8, 290, 400, 50);
    auto waiting = a_delay(10, 240, 290);
    waiting.cause = "waiting for barge";
    season.delays.add(waiting);
    auto change = a_delay(11, 230, 240);
    change.cause = "barge change";
    season.delays.add(change);
    auto weather = a_delay(12, 120, 130);
    weather.cause = "weather";
    season.delays.add(weather);
    auto trip = a_trip(20, 6, 105, 285);
    trip.tug = id_of(60);
    season.trips.add(trip);
    const auto found = pace(season, season_hours(season, shift_minute(900)), shift_minute(900));
    CHECK(found.loads == 3);
    CHECK_THAT(found.fill->median, WithinAbs(110, 1e-9));   // 100, 110 without the weather, 110
    CHECK_THAT(found.change->median, WithinAbs(10, 1e-9));  // 10 and 10 without the waiting
    CHECK_THAT(found.round_trip->median, WithinAbs(180, 1e-9));
    CHECK(found.tugs == 1);
    CHECK(found.barges == 2);
    CHECK(found.governs() == Governs::tugs);
    CHECK_THAT(*found.measured, WithinAbs(3.0 / 12, 1e-9));
}
