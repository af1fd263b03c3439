// SPDX-License-Identifier: GPL-3.0-or-later
// Projections against published positions. Labels: SEEN, read in a text; COMP, computed with a reference
// program; MEM, from memory.
#include "tests/unit/place/shapes.h"

namespace spoilbook::test {
namespace {

Crs crs(int code) {
    return Crs::from_epsg(code).value();
}

}  // namespace

TEST_CASE("the published British example comes out to the printed centimetre", "[place][published]") {
    // GD-01, GD-02, GD-05, GD-06 SEEN: IOGP Guidance Note 7-2 (373-07-02, Sept 2019) pp. 54-55, Transverse
    // Mercator, OSGB36 / British National Grid. The print is up to 8 mm off the exact values.
    const Crs grid = crs(27700);
    const EastNorth place = grid.project_own_datum({50.5, 0.5});
    CHECK_THAT(place.easting_m, WithinAbs(577274.99, 0.01));
    CHECK_THAT(place.northing_m, WithinAbs(69740.50, 0.01));
    // GD-03, GD-04 COMP: PROJ 9.1.1, and GeographicLib 2.1.2 TransverseMercatorProj (177274.98381 + 400000).
    CHECK_THAT(place.easting_m, WithinAbs(577274.9838, 0.0001));
    CHECK_THAT(place.northing_m, WithinAbs(69740.4923, 0.0001));

    const LonLat back = grid.unproject_own_datum({577274.99, 69740.50});
    CHECK_THAT(back.lat_deg, WithinAbs(50.5, 2e-7));
    CHECK_THAT(back.lon_deg, WithinAbs(0.5, 2e-7));
}

TEST_CASE("the Ordnance Survey's worked example comes out to the millimetre", "[place][published]") {
    // GD-07, GD-08 SEEN: Ordnance Survey, A guide to coordinate systems in Great Britain, Annex C:
    // 52 39 27.2531 N, 1 43 4.5177 E.
    const EastNorth place =
        crs(27700).project_own_datum({52 + 39 / 60.0 + 27.2531 / 3600, 1 + 43 / 60.0 + 4.5177 / 3600});
    CHECK_THAT(place.easting_m, WithinAbs(651409.903, 0.001));
    CHECK_THAT(place.northing_m, WithinAbs(313177.270, 0.001));
}

TEST_CASE("New Zealand's own test points come back to the printed nanodegree", "[place][published]") {
    // GD-09 to GD-14 SEEN: LINZ, NZTM2000 sample program nztm.c, self-test points; LINZS25002.
    const Crs nztm = crs(2193);
    struct Row {
        EastNorth map;
        LonLat earth;
    };
    for (const Row& row : {Row{{1576041.150, 6188574.240}, {-34.444065991, 172.739193967}},
                           Row{{1576542.010, 5515331.050}, {-40.512408980, 172.723105968}},
                           Row{{1307103.220, 4826464.860}, {-46.651295012, 169.172062008}}}) {
        const LonLat got = nztm.unproject(row.map);
        CHECK_THAT(got.lat_deg, WithinAbs(row.earth.lat_deg, 1e-9));
        CHECK_THAT(got.lon_deg, WithinAbs(row.earth.lon_deg, 1e-9));
    }
}

TEST_CASE("a CRS whose registry entry lists northing first still gives eastings first",
          "[place][published]") {
    // GD-15 to GD-22 COMP: PROJ 9.1.1. EPSG:2193 has its axes in the order northing, easting.
    const Crs nztm = crs(2193);
    struct Row {
        LonLat earth;
        EastNorth map;
    };
    for (const Row& row :
         {Row{{-41.28646, 174.776236}, {1748738.6586, 5427920.8581}},
          Row{{-41.0, 173.0}, {1600000.0, 5461242.9382}}, Row{{-36.84, 174.85}, {1764958.1106, 5921279.6234}},
          Row{{-46.6, 168.3}, {1240044.2090, 4828546.1983}}}) {
        const EastNorth got = nztm.project(row.earth);
        CHECK_THAT(got.easting_m, WithinAbs(row.map.easting_m, 1e-4));
        CHECK_THAT(got.northing_m, WithinAbs(row.map.northing_m, 1e-4));
    }
}

TEST_CASE("UTM positions agree with an independent program, north and south", "[place][published]") {
    // GD-23 COMP: PROJ 9.1.1, GeoConvert (GeographicLib 2.1.2) agrees.
    CHECK_THAT(crs(32760).project({-41.28646, 174.776236}).easting_m, WithinAbs(313783.9708, 1e-4));
    // GD-25, GD-26: 43 38 33.24 N, 79 23 13.7 W; whole metres MEM (630084, 4833438, truncated), digits COMP
    // with PROJ 9.1.1.
    const EastNorth north =
        crs(32617).project({43 + 38 / 60.0 + 33.24 / 3600, -(79 + 23 / 60.0 + 13.7 / 3600)});
    CHECK_THAT(north.easting_m, WithinAbs(630084.3105, 1e-4));
    CHECK_THAT(north.northing_m, WithinAbs(4833438.5488, 1e-4));
}

TEST_CASE("scale and true north agree with an independent program", "[place][published]") {
    // COMP: TransverseMercatorProj (GeographicLib 2.1.2) prints meridian convergence (grid north from true
    // north, so true north lies as far the other way) and scale.
    struct Row {
        int epsg = 0;
        LonLat earth;
        double convergence_deg = 0, scale = 0;
    };
    for (const Row& row : {Row{2193, {-41.28646, 174.776236}, -1.1722177942, 0.99987227288},
                           Row{2193, {-36.84, 174.85}, -1.1094777194, 0.99993523621},
                           Row{2193, {-46.6, 168.3}, 3.4185535751, 1.00119295447},
                           Row{32760, {-41.28646, 174.776236}, 1.4677139570, 1.00002677727},
                           Row{27700, {50.5, 0.5}, 1.9295608559, 0.99998728670}}) {
        const Crs grid = crs(row.epsg);
        const EastNorth place = grid.project_own_datum(row.earth);
        CHECK_THAT(grid.scale_factor(place), WithinAbs(row.scale, 1e-8));
        CHECK_THAT(grid.true_north_deg(place), WithinAbs(-row.convergence_deg, 1e-6));
    }
    // SEEN: LINZS25002 gives 0.9996 on the central meridian, 173 E.
    CHECK_THAT(crs(2193).scale_factor({1600000, 5461242.9382}), WithinAbs(0.9996, 1e-8));
}

TEST_CASE("a square of one kilometre on the map has the ellipsoid's own area after scaling",
          "[place][published]") {
    // GD-46 COMP: Planimeter (GeographicLib 2.1.2), 930279.7 m2 with geodesic edges.
    const Crs nztm = crs(2193);
    Ring line;
    for (const LonLat& corner : {LonLat{-41.2860, 174.7800}, LonLat{-41.2860, 174.7900},
                                 LonLat{-41.2960, 174.7900}, LonLat{-41.2960, 174.7800}}) {
        line.points.push_back(nztm.project(corner));
    }
    line.points.push_back(line.points.front());
    const double scale = nztm.scale_factor(nztm.project({-41.2910, 174.7850}));
    CHECK_THAT(area_m2(area_of({line})) / (scale * scale), WithinAbs(930279.7, 0.5));
}

}  // namespace spoilbook::test
