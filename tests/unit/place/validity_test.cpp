// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/unit/place/shapes.h"

namespace spoilbook::test {
namespace {

void check_fault(const Area& area, const std::string& words) {
    CHECK_THAT(why_invalid(area).value_or("sound"), Catch::Contains(words));
    CHECK(why_invalid(area));
}

}  // namespace

TEST_CASE("sound grounds have no fault", "[place][validity]") {
    CHECK_FALSE(why_invalid(ground_with_wreck()));
    CHECK_FALSE(why_invalid(area_of({wavy_ring({713000, 5498500}, 1000, 190)})));
    CHECK_FALSE(why_invalid(Area{{Polygon{{box(0, 0, 10, 10)}}, Polygon{{box(20, 0, 30, 10)}}}}));
    // Two cells that touch at one corner.
    CHECK_FALSE(why_invalid(Area{{Polygon{{box(0, 0, 10, 10)}}, Polygon{{box(10, 10, 20, 20)}}}}));
    // A triangle, the fewest corners.
    CHECK_FALSE(why_invalid(area_of({ring({{0, 0}, {10, 0}, {0, 10}})})));
}

TEST_CASE("a ring that crosses itself is named with the place of the crossing", "[place][validity]") {
    check_fault(area_of({ring({{711640, 5497370}, {711740, 5497470}, {711740, 5497370}, {711640, 5497470}})}),
                "the edges cross or lie on one another near easting 711690, northing 5497420");
}

TEST_CASE("a ring that is too short, open or empty is named", "[place][validity]") {
    check_fault(Area{}, "the area has no parts");
    check_fault(Area{{Polygon{}}}, "part 1 has no rings");
    check_fault(area_of({Ring{}}), "part 1 ring 1 has no points");
    check_fault(area_of({ring({{3, 4}})}),
                "part 1 ring 1 has 2 points at easting 3.00, northing 4.00; the fewest is four");
    check_fault(area_of({ring({{3, 4}, {5, 6}})}), "part 1 ring 1 has 3 points");
    Ring open = box(0, 0, 10, 20);
    open.points.pop_back();
    check_fault(area_of({box(-5, -5, 30, 30), open}),
                "part 1 ring 2 is not closed: it begins at easting 0.00, northing 0.00 and ends at easting "
                "0.00, northing 20.00");
}

TEST_CASE("a coordinate that is not a number is named by its point", "[place][validity]") {
    Ring line = box(0, 0, 10, 10);
    line.points[2].easting_m = NAN;
    check_fault(Area{{Polygon{{box(20, 0, 30, 10)}}, Polygon{{line}}}},
                "part 2 ring 1: point 3 has a coordinate that is not a number");
    line.points[2].easting_m = INFINITY;
    check_fault(area_of({line}), "point 3");
}

TEST_CASE("holes and parts in the wrong place are named", "[place][validity]") {
    check_fault(area_of({box(0, 0, 10, 10), box(20, 0, 30, 10)}), "a hole lies outside its outer ring near");
    check_fault(area_of({box(0, 0, 10, 10), box(2, 2, 8, 8), box(3, 3, 4, 4)}),
                "a hole lies inside another hole");
    check_fault(area_of({box(0, 0, 10, 10), box(5, 5, 15, 8)}), "the edges cross or lie on one another near");
    check_fault(Area{{Polygon{{box(0, 0, 10, 10)}}, Polygon{{box(2, 2, 3, 3)}}}},
                "a part lies inside another");
    check_fault(Area{{Polygon{{box(0, 0, 10, 10)}}, Polygon{{box(5, 5, 15, 15)}}}}, "the edges cross");
    check_fault(Area{{Polygon{{box(0, 0, 10, 10)}}, Polygon{{box(10, 0, 20, 10)}}}}, "lie on one another");
    check_fault(area_of({ring({{0, 0}, {5, 5}, {10, 10}, {2, 2}})}), "");
    check_fault(area_of({ring({{0, 0}, {0, 0}, {0, 0}, {0, 0}})}), "a ring has too few different points");
    check_fault(area_of({box(0, 0, 10, 10), ring({{0, 5}, {5, 10}, {10, 5}, {5, 0}})}),
                "cut the area in two");
}

}  // namespace spoilbook::test
