// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/haul_distance.h"

#include "tests/unit/place/shapes.h"

namespace spoilbook::test {

TEST_CASE("the surveyors' test line has its published length", "[place][published]") {
    // GD-27 SEEN: Vincenty 1975 / Geoscience Australia, GDA Technical Manual, Flinders Peak to Buninyong.
    const LonLat flinders_peak{-(37 + 57 / 60.0 + 3.72030 / 3600), 144 + 25 / 60.0 + 29.52440 / 3600};
    const LonLat buninyong{-(37 + 39 / 60.0 + 10.15610 / 3600), 143 + 55 / 60.0 + 35.38390 / 3600};
    CHECK_THAT(haul_distance_m(flinders_peak, buninyong), WithinAbs(54972.271, 0.0005));
    CHECK_THAT(haul_distance_m(buninyong, flinders_peak), WithinAbs(54972.271, 0.0005));
}

TEST_CASE("long, short and nearly antipodal lines have their published lengths", "[place][published]") {
    // GD-32, 34, 36, 38, 40, 44 SEEN: Karney, GeodTest.dat (WGS 84), Zenodo 2010.
    struct Row {
        LonLat from, to;
        double length_m = 0;
    };
    for (const Row& row :
         {Row{{35.602540598169, 0}, {-19.406200172031696834, 78.995799629955596127}, 10299779.6328425},
          Row{{18.725775553796, 0}, {18.724785210853172866, .006615636046166963}, 706.2676803},
          Row{{47.900780879363, 0}, {47.899309788344023215, .001327005894209747}, 191.3088022},
          Row{{36.800966049655, 0}, {36.802889529289609993, .002261122427425817}, 293.7372273},
          Row{{56.310719132311, 0}, {56.304258387808388716, .005380024608319352}, 792.7231052},
          Row{{20.423135394589, 0}, {-21.179388017798691648, 179.757116934570412271}, 19917969.3423672}}) {
        CHECK_THAT(haul_distance_m(row.from, row.to), WithinAbs(row.length_m, 1e-6));
    }
}

TEST_CASE("a haul over the 180th meridian is as long as it is", "[place]") {
    // COMP: GeodSolve (GeographicLib 2.1.2).
    CHECK_THAT(haul_distance_m({-16.5, 179.95}, {-16.6, -179.95}), WithinAbs(15375.08783800, 1e-6));
    CHECK_THAT(haul_distance_m({-41.30, 174.95}, {-41.41, 174.90}), WithinAbs(12913.33170310, 1e-6));
}

TEST_CASE("a course a hair west of north is north", "[place]") {
    CHECK(course_deg({-90, -180}, {90, -1e-12}) < 360);
    CHECK(course_deg({0, 0}, {1, -1e-16}) < 360);
    CHECK_THAT(course_deg({0, 0}, {1, -1e-9}), WithinAbs(360, 1e-6));
}

TEST_CASE("a haul from nowhere has no length", "[place]") {
    CHECK(haul_distance_m({-41.3, 174.9}, {-41.3, 174.9}) == 0);
    CHECK(std::isnan(haul_distance_m({NAN, 174.9}, {-41.3, 174.9})));
    CHECK(std::isnan(haul_distance_m({-41.3, 174.9}, {91, 174.9})));
}

}  // namespace spoilbook::test
