// SPDX-License-Identifier: GPL-3.0-or-later
#include <random>

#include "tests/unit/place/shapes.h"

namespace spoilbook::test {

TEST_CASE("areas of published shapes", "[place][published]") {
    // GD-49 COMP, by hand: 4 by 3.
    CHECK(area_m2(area_of({ring({{0, 0}, {4, 0}, {4, 3}, {0, 3}})})) == 12);
    // GD-50 COMP: a dented square far from the origin, 70 m2, loses no digits.
    CHECK_THAT(area_m2(area_of({ring({{0, 0}, {10, 0}, {10, 10}, {5, 4}, {0, 10}}, 1748000, 5427000)})),
               WithinAbs(70, 1e-6));
}

TEST_CASE("points in and out of a dented square", "[place][published]") {
    // GD-51 to GD-57 COMP, even-odd rule.
    const Area dented = area_of({ring({{0, 0}, {10, 0}, {10, 10}, {5, 4}, {0, 10}})});
    CHECK(contains(dented, {5, 3}));
    CHECK_FALSE(contains(dented, {5, 7}));
    CHECK(contains(dented, {9, 8}));
    CHECK_FALSE(contains(dented, {-1, 5}));
    CHECK(contains(dented, {5, 3.999}));
    CHECK_FALSE(contains(dented, {5, 4.001}));
}

TEST_CASE("a hole takes its area off and holds nothing", "[place][polygon]") {
    const Area ground = ground_with_wreck();
    // By hand: 2778 m x 2222 m less 200 m x 200 m.
    CHECK_THAT(area_m2(ground), WithinAbs(6172716 - 40000, 1e-3));
    CHECK_FALSE(contains(ground, {713000, 5498400}));
    CHECK(contains(ground, {712800, 5498400}));
    // By hand: 100 m west of the hole's west side; in the hole's middle; 30 m south of the ground.
    CHECK_THAT(signed_distance_m(ground, {712800, 5498400}), WithinAbs(100, 1e-9));
    CHECK_THAT(signed_distance_m(ground, {713000, 5498400}), WithinAbs(-100, 1e-9));
    CHECK_THAT(signed_distance_m(ground, {712000, 5497340}), WithinAbs(-30, 1e-9));
    // Off a corner by 3 and 4.
    CHECK_THAT(signed_distance_m(ground, {711637, 5497366}), WithinAbs(-5, 1e-9));
}

TEST_CASE("a release on the boundary is inside, at distance nought", "[place][polygon]") {
    const Area ground = ground_with_wreck();
    for (const EastNorth edge : {EastNorth{711640, 5498000}, EastNorth{711640, 5497370},
                                 EastNorth{714418, 5499592}, EastNorth{713100, 5498400}}) {
        CHECK(signed_distance_m(ground, edge) == 0);
        CHECK(contains(ground, edge));
    }
    // A slanted edge's middle cannot be written in binary, and still lies on the edge.
    const Area slanted =
        area_of({ring({{711640.1, 5497370.3}, {714418.7, 5499592.9}, {711640.1, 5499592.9}})});
    for (int i = 1; i < 100; ++i) {
        const double t = i / 100.0;
        CHECK(signed_distance_m(slanted, {711640.1 + t * 2778.6, 5497370.3 + t * 2222.6}) == 0);
    }
    // Two micrometres off it is off it.
    CHECK_THAT(signed_distance_m(ground, {711639.999998, 5498000}), WithinAbs(-2e-6, 1e-8));
}

TEST_CASE("every part of a ground of many parts counts", "[place][polygon]") {
    const Area two{{Polygon{{box(0, 0, 10, 10), box(4, 4, 6, 6)}}, Polygon{{box(20, 0, 30, 10)}}}};
    CHECK(area_m2(two) == 196);
    CHECK(signed_distance_m(two, {25, 5}) == 5);
    CHECK(signed_distance_m(two, {15, 5}) == -5);
    CHECK(signed_distance_m(two, {5, 5}) == -1);
    CHECK(signed_distance_m(two, {3, 5}) == 1);
    // An islet in the hole is a part of its own.
    const Area islet{{Polygon{{box(0, 0, 10, 10), box(2, 2, 8, 8)}}, Polygon{{box(4, 4, 6, 6)}}}};
    CHECK(signed_distance_m(islet, {5, 5}) == 1);
    CHECK(signed_distance_m(islet, {3, 5}) == -1);
}

TEST_CASE("nothing holds nothing, and nowhere is in nothing", "[place][polygon]") {
    CHECK(area_m2({}) == 0);
    CHECK_FALSE(contains({}, {0, 0}));
    CHECK(signed_distance_m({}, {0, 0}) == -INFINITY);
    CHECK(std::isnan(signed_distance_m(ground_with_wreck(), {NAN, 5498000})));
    CHECK_FALSE(contains(ground_with_wreck(), {NAN, 5498000}));
    CHECK(area_m2(area_of({Ring{}})) == 0);
}

TEST_CASE("a ring left open is measured as if closed, either way round", "[place][polygon]") {
    Ring open = ring({{0, 0}, {10, 0}, {10, 10}, {5, 4}, {0, 10}});
    open.points.pop_back();
    CHECK(area_m2(area_of({open})) == 70);
    CHECK(signed_distance_m(area_of({open}), {1, 5}) == 1);
    std::reverse(open.points.begin(), open.points.end());
    CHECK(area_m2(area_of({open})) == 70);
    CHECK(signed_distance_m(area_of({open}), {1, 5}) == 1);
}

TEST_CASE("distances agree with slow ones by summed angles and by halving", "[place][polygon]") {
    const Area ground =
        area_of({wavy_ring({713000, 5498500}, 1000, 190), wavy_ring({712900, 5498500}, 150, 10)});
    std::mt19937 dice(20260601);
    std::uniform_real_distribution<double> off(-1500, 1500);
    for (int i = 0; i < 400; ++i) {
        const EastNorth place{713000 + off(dice), 5498500 + off(dice)};
        CHECK_THAT(signed_distance_m(ground, place), WithinAbs(slow_signed_distance(ground, place), 1e-6));
    }
}

TEST_CASE("an area agrees with a count of fine squares", "[place][polygon]") {
    const Area ground = area_of({wavy_ring({0, 0}, 100, 90), wavy_ring({-10, 0}, 20, 12)});
    int hits = 0;
    for (double x = -149.75; x < 150; x += 0.5) {
        for (double y = -149.75; y < 150; y += 0.5) {
            if (enclosed_by_angles(ground.parts[0].rings[0], {x, y}) &&
                !enclosed_by_angles(ground.parts[0].rings[1], {x, y})) {
                ++hits;
            }
        }
    }
    // Some 3000 squares lie on the edges; their halves cancel to a few squares of 0.25 m2.
    CHECK_THAT(area_m2(ground), WithinAbs(hits * 0.25, 25));
}

}  // namespace spoilbook::test
