// SPDX-License-Identifier: GPL-3.0-or-later
// Where a position lies, and where the hopper is behind her tug.
#include "model/answer/spot.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "model/answer/hopper_now.h"
#include "model/unit/time_text.h"
#include "tests/support/small_id.h"

using namespace spoilbook;
using Catch::WithinAbs;
using tests::id_of;

namespace {

const Id near_ground = id_of(1), far_ground = id_of(2), west = id_of(3), hole = id_of(4);

std::string box(double west_deg, double south_deg, double east_deg, double north_deg) {
    const auto corner = [](double lon, double lat) {
        return "[" + std::to_string(lon) + "," + std::to_string(lat) + "]";
    };
    return R"({"type":"Polygon","coordinates":[[)" + corner(west_deg, south_deg) + "," +
           corner(east_deg, south_deg) + "," + corner(east_deg, north_deg) + "," +
           corner(west_deg, north_deg) + "," + corner(west_deg, south_deg) + "]]}";
}

template <class R>
R placed(const Id& id, const std::string& geometry) {
    R row;
    row.id = id;
    row.geometry = geometry;
    return row;
}

/// Two invented grounds in open ocean: 0.02° by 0.01° with a cell and a hole, and another 0.1° east.
Season a_season() {
    Season season;
    season.harbour.epsg = 32760;
    auto ground = placed<Ground>(near_ground, box(179.62, -40.59, 179.64, -40.58));
    ground.ground = "Gannet Patch";
    season.grounds.add(ground);
    ground = placed<Ground>(far_ground, box(179.72, -40.59, 179.74, -40.58));
    ground.ground = "Tern Hole";
    season.grounds.add(ground);
    auto cell = placed<Cell>(west, box(179.62, -40.59, 179.63, -40.58));
    cell.cell = "W";
    cell.kind = "cell";
    cell.ground = near_ground;
    season.cells.add(cell);
    cell = placed<Cell>(hole, box(179.634, -40.586, 179.636, -40.584));
    cell.cell = "wreck";
    cell.kind = "exclusion";
    cell.ground = near_ground;
    season.cells.add(cell);
    return season;
}

struct Placed {
    Season season = a_season();
    GroundMap map{season};
    Spot at(double lat, double lon, std::optional<double> u_m = 5, const Id& ground = near_ground) const {
        return spot_of(season, map, {lat, lon}, u_m, ground);
    }
};

Instant second(int s) {
    return parse_instant("2025-11-04T00:00:00Z", Zone::utc()).value() + std::int64_t{s} * ms_per_second;
}

/// A tug that steams due north along a meridian at 2e-5° a second (2.2 m), to 40.585° S at second 300.
std::vector<ReceiverFix> northward(int from, int to) {
    std::vector<ReceiverFix> fixes;
    for (int s = from; s <= to; ++s)
        fixes.push_back({second(s), {-40.585 + (s - 300) * 2e-5, 179.628}});
    return fixes;
}

}  // namespace

TEST_CASE("a position is told by its ground, its cell and its distance to the edge", "[answer][spot]") {
    const Placed placed;
    // The wreck's edge is nearest: 0.006° of longitude there, 508.0 m (COMP, GeographicLib).
    const Spot inside = placed.at(-40.585, 179.628);
    CHECK(inside.verdict == PlaceVerdict::inside);
    CHECK_THAT(inside.distance_m, WithinAbs(508.0, 0.5));
    CHECK(inside.cell == "W");
    CHECK(spot_text(inside) == "inside Gannet Patch, 508 m from its edge");
    const Spot outside = placed.at(-40.579, 179.628);
    CHECK(outside.verdict == PlaceVerdict::outside);
    CHECK_THAT(outside.distance_m, WithinAbs(-111.1, 0.5));
    CHECK(spot_text(outside) == "outside Gannet Patch, 111 m from its edge");
    CHECK(placed.at(-40.585, 179.635).verdict == PlaceVerdict::outside);  // on the wreck
}

TEST_CASE("nearer to the edge than it is sure, a position cannot tell", "[answer][spot]") {
    const Placed placed;
    CHECK(placed.at(-40.5801, 179.628, 5).verdict == PlaceVerdict::inside);  // 11 m inside, 2u is 10
    const Spot unsure = placed.at(-40.5801, 179.628, std::nullopt);
    CHECK(unsure.verdict == PlaceVerdict::cannot_tell);
    CHECK(unsure.position_u_m == usual_position_u_m);
    CHECK(spot_text(unsure) ==
          "inside Gannet Patch, 11 m from its edge, but the position is sure to ± 20 m (95 %) only: "
          "cannot tell");
}

TEST_CASE("without a ground named the nearest one counts", "[answer][spot]") {
    const Placed placed;
    CHECK(placed.at(-40.585, 179.731, 5, {}).ground == "Tern Hole");
    CHECK(placed.at(-40.585, 179.731).ground == "Gannet Patch");
    CHECK(placed.at(-40.585, 179.625, 5, {}).ground == "Gannet Patch");
}

TEST_CASE("a slip of the pen is told by what would mend it", "[answer][spot]") {
    const Placed placed;
    const Spot north = placed.at(40.585, 179.628);
    CHECK(north.odd);
    CHECK(north.slip == Slip::latitude_sign);
    // From 40.59° S to 40.585° N along a meridian: 8 989.5 km (COMP, GeographicLib).
    CHECK_THAT(north.distance_m, WithinAbs(-8'989'500, 2'000));
    CHECK(spot_text(north) == "8988 km from Gannet Patch: is the latitude's sign right?");
    CHECK(placed.at(-40.585, -179.628).slip == Slip::longitude_sign);  // over the date line, 62 km east of it
    CHECK(placed.at(-40.585, -179.628).odd);
    CHECK(placed.at(40.585, -179.628).slip != Slip::latitude_sign);
    const Spot off = placed.at(-42.4, 179.628);
    CHECK(off.odd);
    CHECK(off.slip == Slip::none);
    CHECK(spot_text(off) == "202 km from Gannet Patch: is it typed right?");
}

TEST_CASE("a book without a map answers without a ground", "[answer][spot]") {
    const Season season;
    const GroundMap map(season);
    CHECK(spot_of(season, map, {-40.585, 179.63}, 5, {}).ground.empty());
}

TEST_CASE("towed astern the hopper is one line-length back on the tug's track", "[answer][spot]") {
    const Placed placed;
    Trip trip;
    trip.ground = near_ground;
    trip.tow = "astern";
    trip.tow_line_m = 200;
    const auto now = hopper_now(placed.season, placed.map, trip, northward(0, 300), 5, "tug", west);
    REQUIRE(now);
    CHECK(now->astern);
    // 200 m on this map, whose metres are 0.02 % long, in degrees of latitude: 0.0018007° (COMP,
    // GeographicLib).
    CHECK_THAT(now->place.lat_deg, WithinAbs(-40.585 - 0.0018007, 1e-6));
    CHECK_THAT(now->place.lon_deg, WithinAbs(179.628, 1e-6));
    // 0.005° of latitude is 555.2 m (COMP, GeographicLib), 0.02 % more on this map.
    CHECK_THAT(now->spot.distance_m, WithinAbs(555.3 - 200, 0.5));
    // 200 m × sin 15° / 1.96 = 26.41 m, with 5 m: 26.88 m (COMP, by hand from the rule in calculations.md).
    CHECK_THAT(now->spot.position_u_m, WithinAbs(26.88, 0.005));
    REQUIRE(now->to_cell);
    CHECK(now->to_cell->cell == "W");
    CHECK(now->to_cell->course_deg > 270);  // the middle of W lies to the north-west of the hopper
    // Its midline is 254 m west; along it many places are equally far from any edge.
    CHECK(now->to_cell->distance_m >= 253.5);
    CHECK(now->to_cell->distance_m <= std::hypot(254.0, 700.0));
}

TEST_CASE("a track that is too short, or a line that is not recorded, is said and counted as uncertainty",
          "[answer][spot]") {
    const Placed placed;
    Trip trip;
    trip.ground = near_ground;
    trip.tow = "astern";
    trip.tow_line_m = 200;
    const auto soon = hopper_now(placed.season, placed.map, trip, northward(290, 300), 5, "tug", {});
    REQUIRE(soon);
    CHECK_FALSE(soon->astern);
    CHECK(soon->why_not == "the track does not reach back one tow line of 200 m");
    CHECK_THAT(soon->spot.position_u_m, WithinAbs(200.06, 0.005));
    CHECK_FALSE(soon->to_cell);
    trip.tow_line_m.reset();
    CHECK(hopper_now(placed.season, placed.map, trip, northward(0, 300), 5, "tug", {})->why_not ==
          "the length of the tow line is not recorded");
    const auto on_barge = hopper_now(placed.season, placed.map, trip, northward(0, 300), 5, "barge", {});
    CHECK(on_barge->why_not.empty());
    CHECK_THAT(on_barge->place.lat_deg, WithinAbs(-40.585, 1e-6));
    CHECK_FALSE(hopper_now(placed.season, placed.map, trip, {}, 5, "tug", {}));
}
