// SPDX-License-Identifier: GPL-3.0-or-later
// Not run by default: test_place "[benchmark]". Sizes: 150 000 places, a ground of 200 corners with a hole.
#include <chrono>
#include <iostream>

#include "tests/unit/place/shapes.h"

namespace spoilbook::test {
namespace {

constexpr int places = 150000;

template <class Work>
double seconds(Work work) {
    const auto begin = std::chrono::steady_clock::now();
    work();
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
}

Area big_ground() {
    return area_of({wavy_ring({713000, 5498500}, 1000, 190), wavy_ring({712900, 5498500}, 150, 10)});
}

}  // namespace

TEST_CASE("150 000 distances to a ground of 200 corners", "[.][benchmark]") {
    const Area ground = big_ground();
    double sum = 0;
    const double took = seconds([&] {
        for (int i = 0; i < places; ++i)
            sum += signed_distance_m(ground, {711500.0 + i % 3000, 5497000 + i / 50.0});
    });
    std::cout << "signed_distance_m x 150000: " << took << " s\n";
    CHECK(std::isfinite(sum));
}

TEST_CASE("150 000 positions onto the map and back", "[.][benchmark]") {
    for (const int code : {32760, 2193, 27700}) {
        const Crs crs = Crs::from_epsg(code).value();
        const LonLat start = code == 27700 ? LonLat{50.5, 0.5} : LonLat{-40.65, 176.5};
        std::vector<LonLat> many(places);
        for (int i = 0; i < places; ++i) {
            many[static_cast<std::size_t>(i)] = {start.lat_deg + 1e-6 * i, start.lon_deg};
        }
        std::vector<EastNorth> map;
        double sum = 0;
        std::cout << "EPSG:" << code << " in one go: " << seconds([&] { map = crs.project(many); })
                  << " s, back " << seconds([&] { many = crs.unproject(map); })
                  << " s, one by one: " << seconds([&] {
                         for (const LonLat& place : many)
                             sum += crs.project(place).easting_m;
                     })
                  << " s\n";
        CHECK(std::isfinite(sum));
    }
}

TEST_CASE("the farthest place in a ground of 200 corners and in a long rectangle", "[.][benchmark]") {
    std::cout << "farthest_inside wavy: " << seconds([] { CHECK(is_known(farthest_inside(big_ground()))); })
              << " s, rectangle 100 km x 0.5 m: "
              << seconds([] { CHECK(is_known(farthest_inside(area_of({box(0, 0, 100000, 0.5)})))); })
              << " s, ground: " << seconds([] { CHECK(is_known(farthest_inside(ground_with_wreck()))); })
              << " s\n";
}

}  // namespace spoilbook::test
