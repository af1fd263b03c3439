// SPDX-License-Identifier: GPL-3.0-or-later
// How much of each pixel an area covers, against GEOS's overlay of the two polygons, on areas made up now.
#include <rapidcheck.h>
#include <rapidcheck/catch.h>

#include <algorithm>
#include <cmath>

#include "model/bed/coverage.h"
#include "tests/published/any_star.h"
#include "tests/published/geos_plane.h"
#include "tests/unit/bed/grids.h"

using namespace spoilbook;
using namespace spoilbook::test;

namespace {

/// About a grid of 24 by 16 pixels: over its edges, perhaps with a hole, perhaps in two parts.
GeoJsonCoordinates any_area() {
    const double east = 711'640 + any_metres(-4, 28), north = 5'497'370 + any_metres(-4, 20);
    GeoJsonCoordinates parts{{any_star(east, north, 6, 12, 3, 12)}};
    if (*rc::gen::arbitrary<bool>()) parts[0].push_back(any_star(east, north, 1, 2, 3, 12));
    if (*rc::gen::arbitrary<bool>()) parts.push_back({any_star(east + 30, north, 2, 12, 3, 12)});
    return parts;
}

GeosArea pixel(double west, double south) {
    return GeosArea(
        {{{{west, south}, {west + 1, south}, {west + 1, south + 1}, {west, south + 1}, {west, south}}}});
}

}  // namespace

TEST_CASE("pixels are covered by the share that GEOS finds", "[bed][published]") {
    MadeGrid grid;
    grid.rows.assign(16, std::vector<double>(24, -8));
    const std::string text = grid.text();
    const auto made = BedGrid::open(HeldBytes(text), "survey SV-1");
    REQUIRE(made);
    rc::prop("every pixel, in one window or in strips of any height", [&] {
        const auto coordinates = any_area();
        const auto area = area_from_projected(coordinates).value();
        const GeosArea shape(coordinates);
        const Coverage coverage(area, *made);
        const GridWindow all{0, 0, 24, 16};
        const auto shares = coverage.shares(all);
        const int height = *rc::gen::inRange(1, 17);
        for (int row = 0; row < 16; ++row) {
            const GridWindow strip{0, row / height * height, 24,
                                   std::min(height, 16 - row / height * height)};
            const auto in_strip = coverage.shares(strip);
            for (int column = 0; column < 24; ++column) {
                const double m2 = shape.overlap_m2(pixel(711'640 + column, 5'497'370 + 15 - row));
                const double share = shares[static_cast<std::size_t>(row * 24 + column)];
                RC_ASSERT(std::abs(share - m2) < 1e-6);
                const auto place = static_cast<std::size_t>((row - strip.row) * 24 + column);
                RC_ASSERT(std::abs(in_strip[place] - share) < 1e-9);
                const auto window = coverage.window();
                const bool is_in = window && column >= window->column &&
                                   column < window->column + window->columns && row >= window->row &&
                                   row < window->row + window->rows;
                RC_ASSERT(is_in || m2 < 1e-9);
            }
        }
    });
}
