// SPDX-License-Identifier: GPL-3.0-or-later
#include <limits>

#include "tests/unit/place/shapes.h"

namespace spoilbook::test {

TEST_CASE("a square's middle is farthest from its edges", "[place][farthest]") {
    const EastNorth place = farthest_inside(area_of({box(711640, 5497370, 711740, 5497470)}));
    CHECK_THAT(place.easting_m, WithinAbs(711690, 0.001));
    CHECK_THAT(place.northing_m, WithinAbs(5497420, 0.001));
}

TEST_CASE("a long claim's farthest place is anywhere on its middle line", "[place][farthest]") {
    const Area claim = area_of({box(0, 0, 3000, 40)});
    CHECK_THAT(signed_distance_m(claim, farthest_inside(claim)), WithinAbs(20, 0.001));
    const Area thread = area_of({box(0, 0, 10000, 0.5)});
    CHECK_THAT(signed_distance_m(thread, farthest_inside(thread)), WithinAbs(0.25, 0.001));
}

TEST_CASE("a triangle's farthest place is the centre of its inscribed circle", "[place][farthest]") {
    // By hand: sides 3, 4, 5; radius 1; centre (1, 1).
    const EastNorth place = farthest_inside(area_of({ring({{0, 0}, {4, 0}, {0, 3}})}));
    CHECK_THAT(place.easting_m, WithinAbs(1, 1e-4));
    CHECK_THAT(place.northing_m, WithinAbs(1, 1e-4));
}

TEST_CASE("a dented claim's middle of mass lies outside, its farthest place does not", "[place][farthest]") {
    // A horseshoe 30 wide with arms 10 wide: the widest are its two lower corners, by hand: the circle
    // touches both outer sides and the inner corner, r + r/sqrt 2 ... = 10 / (1 + 1/sqrt 2) for the diagonal.
    const Area shoe =
        area_of({ring({{0, 0}, {30, 0}, {30, 30}, {20, 30}, {20, 10}, {10, 10}, {10, 30}, {0, 30}})});
    const double by_hand = 10 * std::sqrt(2.0) / (std::sqrt(2.0) + 1);
    CHECK_THAT(signed_distance_m(shoe, farthest_inside(shoe)), WithinAbs(by_hand, 1e-4));
}

TEST_CASE("no place on a fine grid is farther inside", "[place][farthest]") {
    for (const Area& area :
         {area_of({wavy_ring({0, 0}, 100, 60), wavy_ring({-10, 0}, 30, 12)}), ground_with_wreck(),
          Area{{Polygon{{box(0, 0, 10, 10), box(4, 4, 6, 6)}}, Polygon{{box(20, 0, 27, 11)}}}}}) {
        const EastNorth found = farthest_inside(area);
        const double distance = signed_distance_m(area, found);
        constexpr double far = std::numeric_limits<double>::infinity();
        double west = far, south = far, east = -far, north = -far;
        for (const Polygon& part : area.parts) {
            for (const EastNorth& p : part.rings[0].points) {
                west = std::min(west, p.easting_m);
                east = std::max(east, p.easting_m);
                south = std::min(south, p.northing_m);
                north = std::max(north, p.northing_m);
            }
        }
        double best = 0;
        for (int i = 0; i <= 300; ++i) {
            for (int j = 0; j <= 300; ++j) {
                best = std::max(best, signed_distance_m(area, {west + (east - west) * i / 300,
                                                               south + (north - south) * j / 300}));
            }
        }
        CHECK(distance >= best - 0.001);
        // Nor is it farther than a grid of that mesh could have missed.
        CHECK(distance <= best + std::hypot(east - west, north - south) / 300);
        CHECK(farthest_inside(area) == found);
    }
}

TEST_CASE("between small wrecks the middle line is bent, and is followed all the same", "[place][farthest]") {
    std::vector<Ring> rings{box(0, 0, 100, 100)};
    for (const EastNorth wreck :
         {EastNorth{51, 13}, EastNorth{62, 84}, EastNorth{87, 57}, EastNorth{36, 74}, EastNorth{88, 67}}) {
        rings.push_back(ring({{0, 0}, {1, 0}, {0, 1}}, wreck.easting_m, wreck.northing_m));
    }
    const Area ground = area_of(std::move(rings));
    double best = 0;
    for (int i = 0; i <= 1000; ++i) {
        for (int j = 0; j <= 1000; ++j)
            best = std::max(best, signed_distance_m(ground, {i * 0.1, j * 0.1}));
    }
    CHECK(signed_distance_m(ground, farthest_inside(ground)) >= best - 0.001);
}

TEST_CASE("nothing has no inside", "[place][farthest]") {
    CHECK_FALSE(is_known(farthest_inside({})));
    CHECK_FALSE(is_known(farthest_inside(area_of({ring({{0, 0}, {5, 5}, {10, 10}})}))));
}

}  // namespace spoilbook::test
