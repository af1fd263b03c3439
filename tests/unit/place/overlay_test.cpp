// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/unit/place/shapes.h"

namespace spoilbook::test {

TEST_CASE("an exclusion in the middle becomes a hole", "[place][overlay]") {
    const Area left = without(area_of({box(0, 0, 100, 100)}), {area_of({box(40, 40, 60, 60)})});
    REQUIRE(left.parts.size() == 1);
    CHECK(left.parts[0].rings.size() == 2);
    CHECK(area_m2(left) == 9600);
    CHECK(signed_distance_m(left, {50, 50}) == -10);
    CHECK(signed_distance_m(left, {30, 50}) == 10);
    CHECK_FALSE(why_invalid(left));
}

TEST_CASE("an exclusion across the ground leaves two parts", "[place][overlay]") {
    const Area left = without(area_of({box(0, 0, 100, 100)}), {area_of({box(-10, 45, 110, 55)})});
    CHECK(left.parts.size() == 2);
    CHECK(area_m2(left) == 9000);
}

TEST_CASE("exclusions that overlap one another are taken out once", "[place][overlay]") {
    const Area left = without(area_of({box(0, 0, 100, 100)}),
                              {area_of({box(10, 10, 30, 30)}), area_of({box(20, 20, 40, 40)})});
    CHECK(area_m2(left) == 10000 - 700);
}

TEST_CASE("an exclusion that covers the ground leaves nothing", "[place][overlay]") {
    const Area left = without(area_of({box(0, 0, 100, 100)}), {area_of({box(-1, -1, 101, 101)})});
    CHECK(left.parts.empty());
    CHECK_FALSE(contains(left, {50, 50}));
    CHECK(without(area_of({box(0, 0, 100, 100)}), {area_of({box(0, 0, 100, 100)})}).parts.empty());
}

TEST_CASE("an exclusion elsewhere or only touching changes no area", "[place][overlay]") {
    const Area ground = area_of({box(0, 0, 100, 100)});
    CHECK(area_m2(without(ground, {area_of({box(100, 0, 200, 100)})})) == 10000);
    CHECK(area_m2(without(ground, {area_of({box(300, 0, 400, 100)})})) == 10000);
    CHECK(area_m2(without(ground, {})) == 10000);
    CHECK(area_m2(without(ground, {Area{}})) == 10000);
    CHECK(without(Area{}, {ground}).parts.empty());
}

TEST_CASE("the ground's own holes stay out", "[place][overlay]") {
    const Area ground = area_of({box(0, 0, 100, 100), box(10, 10, 20, 20)});
    const Area left = without(ground, {area_of({box(15, 15, 30, 30)})});
    CHECK(area_m2(left) == 10000 - 100 - 225 + 25);
    CHECK_FALSE(contains(left, {12, 12}));
    CHECK_FALSE(contains(left, {25, 25}));
}

TEST_CASE("a hair of an overlap leaves no sliver", "[place][overlay]") {
    const Area left = without(area_of({box(0, 0, 100, 100)}), {area_of({box(1e-7, -1, 101, 101)})});
    CHECK(left.parts.empty());
}

TEST_CASE("cells side by side make one ground without inner edges", "[place][overlay]") {
    const Area whole = together({area_of({box(0, 0, 50, 100)}), area_of({box(50, 0, 100, 100)})});
    CHECK(whole.parts.size() == 1);
    CHECK(signed_distance_m(whole, {50, 50}) == 50);
    CHECK(together({}).parts.empty());
}

TEST_CASE("outer rings come out counter-clockwise and holes clockwise", "[place][overlay]") {
    const Area left = without(area_of({box(0, 0, 100, 100)}), {area_of({box(40, 40, 60, 60)})});
    const auto turning = [](const Ring& line) {
        double twice = 0;
        for (std::size_t i = 1; i < line.points.size(); ++i) {
            twice += line.points[i - 1].easting_m * line.points[i].northing_m -
                     line.points[i].easting_m * line.points[i - 1].northing_m;
        }
        return twice;
    };
    CHECK(turning(left.parts[0].rings[0]) > 0);
    CHECK(turning(left.parts[0].rings[1]) < 0);
}

TEST_CASE("a cut at every place agrees with asking both shapes", "[place][overlay]") {
    const Area ground = area_of({wavy_ring({0, 0}, 100, 90)});
    const Area wreck = area_of({wavy_ring({60, 10}, 40, 33)});
    const Area left = without(ground, {wreck});
    for (double x = -150.3; x < 150; x += 7) {
        for (double y = -150.3; y < 150; y += 7) {
            const bool expected = enclosed_by_angles(ground.parts[0].rings[0], {x, y}) &&
                                  !enclosed_by_angles(wreck.parts[0].rings[0], {x, y});
            CHECK(contains(left, {x, y}) == expected);
        }
    }
}

}  // namespace spoilbook::test
