// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/table.h"

#include <catch2/catch.hpp>

using Catch::Matchers::WithinAbs;
using spoilbook::LinearTable;

TEST_CASE("a table is read linearly, with the slope of the stretch", "[table]") {
    // HP-16, COMP numpy.interp, numbers made up: mean of 0.62 0.71 0.58 0.66 0.75 0.68 is 0.6667
    const LinearTable table({{0.0, 1000}, {0.5, 905}, {1.0, 812}, {1.5, 721}, {2.0, 632}});
    const auto point = table.at((0.62 + 0.71 + 0.58 + 0.66 + 0.75 + 0.68) / 6);
    REQUIRE(point);
    CHECK_THAT(point->y, WithinAbs(874.0, 0.000001));
    CHECK_THAT(point->slope, WithinAbs(-186, 1e-9));
}

TEST_CASE("a row of the table gives back its own number", "[table]") {
    const LinearTable table({{0.1, 1000}, {0.7, 905}, {1.0, 812}});  // HP-17: exact at a row
    CHECK(table.at(0.1)->y == 1000);
    CHECK(table.at(0.7)->y == 905);
    CHECK(table.at(1.0)->y == 812);
}

TEST_CASE("a table is never extrapolated", "[table]") {
    const LinearTable table({{0.0, 1000}, {2.0, 632}});
    CHECK_FALSE(table.at(2.3));  // HP-18
    CHECK_FALSE(table.at(-0.01));
    CHECK_FALSE(table.at(2.0 + 1e-6));
    CHECK_FALSE(LinearTable(spoilbook::Table{}).at(0));
    CHECK_FALSE(LinearTable({{1.0, 5}}).at(1.0));
}

TEST_CASE("rounding in a mean does not push a reading off the end of the table", "[table]") {
    const double mean = (0.1 + 0.1 + 0.1) / 3;  // a little over 0.1 in binary
    const LinearTable table({{0.0, 100}, {0.1, 90}});
    REQUIRE(table.at(mean));
    CHECK(table.at(mean)->y == 90);
}

TEST_CASE("a table may be written from the top down or from the bottom up", "[table]") {
    const LinearTable down({{0, 420}, {1, 320}, {3, 60}});
    const LinearTable up({{3, 60}, {1, 320}, {0, 420}});
    for (const double x : {0.0, 0.25, 1.0, 2.9, 3.0}) {
        CHECK(down.at(x)->y == up.at(x)->y);
        CHECK(down.at(x)->slope == up.at(x)->slope);
    }
}

TEST_CASE("a column that a row lacks is no column", "[table]") {
    CHECK(LinearTable({{1, 10, 2}, {2, 20}}, 2).empty());
    CHECK_FALSE(LinearTable({{1, 10, 2}, {2, 20, 3}}, 2).empty());
}
