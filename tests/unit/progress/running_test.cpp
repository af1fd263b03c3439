// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/running.h"

#include <catch2/catch.hpp>

#include "tests/unit/progress/a_shift.h"

using namespace spoilbook;
using namespace spoilbook::tests;

TEST_CASE("the newest shift without an end runs; an ended one does not", "[running]") {
    Season season;
    CHECK(running(season).shift == nullptr);
    season.shifts.add(a_shift(1, 0, 720));
    CHECK(running(season).shift == nullptr);
    CHECK(running(season).last->shift == "S-1");
    season.shifts.add(a_shift(2, 800, std::nullopt));
    CHECK(running(season).shift->shift == "S-2");
}

TEST_CASE("a shift left open long ago does not run once a newer one has ended", "[running]") {
    Season season;
    season.shifts.add(a_shift(1, 0, std::nullopt));
    season.shifts.add(a_shift(2, 800, 1500));
    CHECK(running(season).shift == nullptr);
}

TEST_CASE("the barge alongside is the newest load that was not cast off", "[running]") {
    Season season;
    season.shifts.add(a_shift(1, 0, std::nullopt));
    season.loads.add(a_load(20, 10, 100));
    season.loads.add(a_load(21, 110, std::nullopt));
    CHECK(running(season).load->load == "L-21");
    CHECK(running(season).to_send->load == "L-20");
    season.trips.add(a_trip(30, 20, 120, std::nullopt));
    CHECK(running(season).trip->trip == "T-30");
    CHECK(running(season).to_send->load == "L-21");
}

TEST_CASE("a barge that was turned back still holds her load", "[running]") {
    Season season;
    season.shifts.add(a_shift(1, 0, std::nullopt));
    season.loads.add(a_load(20, 10, 100));
    Trip trip = a_trip(30, 20, 120, 300);
    trip.outcome = "returned_loaded";
    season.trips.add(trip);
    CHECK(running(season).to_send->load == "L-20");
    CHECK(running(season).trip == nullptr);
}

TEST_CASE("a load that was never closed seasons ago is not alongside", "[running]") {
    Season season;
    season.shifts.add(a_shift(1, 0, 720));
    season.shifts.add(a_shift(2, 100'000, 100'720));
    season.shifts.add(a_shift(3, 200'000, std::nullopt));
    season.loads.add(a_load(20, 10, std::nullopt));
    CHECK(running(season).load == nullptr);
}
