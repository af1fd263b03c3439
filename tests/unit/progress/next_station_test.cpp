// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/next_station.h"

#include <catch2/catch.hpp>

#include "tests/unit/progress/a_shift.h"

using namespace spoilbook;
using namespace spoilbook::tests;
using Catch::Matchers::WithinAbs;

TEST_CASE("a pontoon that stepped 4 m astern goes on 4 m astern", "[next_station]") {
    Season season;
    season.stations.add(a_station(2, 1000, 2000, 90, 0));
    season.stations.add(a_station(3, 996, 2000, 90, 60));
    const auto next = next_station(season);
    REQUIRE(next);
    // Heading due east: astern is west.
    CHECK_THAT(next->easting_m, WithinAbs(992, 1e-9));
    CHECK_THAT(next->northing_m, WithinAbs(2000, 1e-9));
    CHECK_THAT(next->step_m, WithinAbs(-4, 1e-9));
    CHECK(next->heading_deg == 90);
    CHECK(next->claim == id_of(50));
}

TEST_CASE("a lane with one station goes on 5 m astern of its heading", "[next_station]") {
    Season season;
    // Heading 30°: 5 m astern is 2.5 m west and 4.330 m south (COMP: sin 30°, cos 30°).
    season.stations.add(a_station(2, 1000, 2000, 30, 0));
    const auto next = next_station(season);
    REQUIRE(next);
    CHECK_THAT(next->easting_m, WithinAbs(997.5, 1e-9));
    CHECK_THAT(next->northing_m, WithinAbs(1995.6698729811, 1e-6));
}

TEST_CASE("a shift to another lane or a sideways move is no advance step", "[next_station]") {
    Season season;
    season.stations.add(a_station(2, 1000, 2000, 90, 0));
    season.stations.add(a_station(3, 1000, 2018, 90, 60));
    CHECK_THAT(next_station(season)->step_m, WithinAbs(-5, 1e-9));
    season.stations.add(a_station(4, 998, 2024, 90, 120));
    CHECK_THAT(next_station(season)->step_m, WithinAbs(-5, 1e-9));
}

TEST_CASE("where the newest station has no place nothing is offered", "[next_station]") {
    Season season;
    CHECK_FALSE(next_station(season));
    Station nowhere = a_station(2, 0, 0, 0, 0);
    nowhere.easting_m.reset();
    season.stations.add(nowhere);
    CHECK_FALSE(next_station(season));
}
