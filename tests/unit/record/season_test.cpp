// SPDX-License-Identifier: GPL-3.0-or-later
// Seasons are values: a copy shares its rows, and nobody can tell.
#include "model/record/season.h"

#include <catch2/catch.hpp>

using namespace spoilbook;

namespace {

Trip trip_of(std::uint8_t number) {
    Trip trip;
    trip.id.bytes[15] = number;
    trip.trip = "T-" + std::to_string(number);
    return trip;
}

}  // namespace

TEST_CASE("what is added to a copy of a season is not in the season, nor the other way round", "[season]") {
    Season season;
    season.trips.add(trip_of(1));
    Season copy = season;
    copy.trips.add(trip_of(2));
    season.trips.add(trip_of(3));
    CHECK(season.trips.size() == 2);
    CHECK(copy.trips.size() == 2);
    CHECK(season.trips.find(trip_of(2).id) == nullptr);
    CHECK(copy.trips.find(trip_of(3).id) == nullptr);
    CHECK(season.trips.find(trip_of(3).id)->trip == "T-3");
    CHECK(copy.trips.find(trip_of(1).id)->trip == "T-1");
}

TEST_CASE("a copy keeps its rows when the season is gone, or its shelf is emptied", "[season]") {
    Season copy;
    {
        Season season;
        season.trips.add(trip_of(1));
        copy = season;
        season.trips = {};
        CHECK(season.trips.rows().empty());
    }
    REQUIRE(copy.trips.size() == 1);
    CHECK(copy.trips.rows().front().trip == "T-1");
}
