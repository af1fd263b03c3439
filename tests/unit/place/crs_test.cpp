// SPDX-License-Identifier: GPL-3.0-or-later
#include <thread>

#include "tests/unit/place/shapes.h"

namespace spoilbook::test {

TEST_CASE("a CRS that no book can be kept in is refused with a sentence", "[place][crs]") {
    struct Row {
        int code;
        const char* because;
    };
    for (const Row& row :
         {Row{4326, "is in degrees"}, Row{4167, "is in degrees"}, Row{2, "no CRS of this code"},
          Row{-1, "no CRS of this code"}, Row{4978, "is not a projected CRS"},
          Row{5773, "is not a projected CRS"}, Row{7405, "is not a projected CRS"},
          Row{2227, "US survey foot"}, Row{2053, "axes"}, Row{3031, "axes"}}) {
        INFO("EPSG:" << row.code);
        const Checked<Crs> crs = Crs::from_epsg(row.code);
        REQUIRE_FALSE(crs.ok());
        CHECK(crs.refusals().front().code == "crs");
        CHECK(crs.refusals().front().where == "EPSG:" + std::to_string(row.code));
        CHECK_THAT(crs.refusals().front().what, Catch::Contains(row.because));
    }
}

TEST_CASE("a CRS tells its code, its name, and that its datum needed no guess", "[place][crs]") {
    const Crs nztm = Crs::from_epsg(2193).value();
    CHECK(nztm.epsg() == 2193);
    CHECK(nztm.name() == "NZGD2000 / New Zealand Transverse Mercator 2000");
    CHECK_THAT(nztm.wkt(), Catch::Contains("2193"));
    CHECK(nztm.datum_note().empty());
    CHECK(Crs::from_epsg(32760).value().datum_note().empty());
    CHECK(Crs::from_epsg(27700).value().datum_note().empty());
}

TEST_CASE("a datum with no published way to WGS 84 is used with a warning", "[place][crs]") {
    // ATS77: the registry has no transformation from it to WGS 84.
    const Checked<Crs> crs = Crs::from_epsg(2220);
    REQUIRE(crs.ok());
    CHECK_THAT(crs->datum_note(), Catch::Contains("may be off by some hundred metres"));
    CHECK(is_known(crs->project({45, -63})));
}

TEST_CASE("positions on an old datum are shifted, not only projected", "[place][crs]") {
    // WGS 84 and OSGB36 lie some 120 m apart in London.
    const Crs grid = Crs::from_epsg(27700).value();
    const EastNorth shifted = grid.project({51.5, 0.0});
    const EastNorth bare = grid.project_own_datum({51.5, 0.0});
    const double apart = std::hypot(shifted.easting_m - bare.easting_m, shifted.northing_m - bare.northing_m);
    CHECK(apart > 80);
    CHECK(apart < 160);
}

TEST_CASE("a position that is none gives a place that is not known", "[place][crs]") {
    const Crs utm = Crs::from_epsg(32760).value();
    CHECK_FALSE(is_known(utm.project({NAN, 177})));
    CHECK_FALSE(is_known(utm.project({-91, 177})));
    CHECK_FALSE(is_known(utm.unproject({NAN, 5497370})));
    CHECK_FALSE(is_known(utm.unproject({1e30, 5497370})));
    CHECK(std::isnan(utm.scale_factor({NAN, NAN})));
    CHECK(std::isnan(utm.true_north_deg({1e30, 0})));
    const std::vector<LonLat> mixed{{-40.6, 179.5}, {NAN, NAN}, {-40.7, 179.6}};
    const auto places = utm.project(mixed);
    CHECK(places.at(0) == utm.project({-40.6, 179.5}));
    CHECK_FALSE(is_known(places.at(1)));
    CHECK(places.at(2) == utm.project({-40.7, 179.6}));
}

TEST_CASE("both names of the 180th meridian are one place", "[place][crs]") {
    const Crs utm = Crs::from_epsg(32760).value();
    const EastNorth east = utm.project({-16.5, 180.05});
    const EastNorth west = utm.project({-16.5, -179.95});
    CHECK_THAT(east.easting_m, WithinAbs(west.easting_m, 1e-6));
    CHECK_THAT(east.northing_m, WithinAbs(west.northing_m, 1e-6));
}

TEST_CASE("several threads at once get the same places as one alone", "[place][crs]") {
    const Crs utm = Crs::from_epsg(32760).value();
    const auto place = [&](int i) { return utm.project({-40.6 - 1e-4 * i, 179.5 + 1e-4 * i}); };
    std::vector<EastNorth> alone;
    alone.reserve(500);
    for (int i = 0; i < 500; ++i)
        alone.push_back(place(i));
    std::vector<int> differing(4, 0);
    std::vector<std::thread> crew;
    crew.reserve(differing.size());
    for (int& mine : differing) {
        crew.emplace_back([&alone, &place, &utm, &mine] {
            for (int i = 0; i < 500; ++i) {
                const EastNorth got = place(i);
                const LonLat back = utm.unproject(got);
                if (got != alone[static_cast<std::size_t>(i)]) ++mine;
                if (std::abs(back.lat_deg - (-40.6 - 1e-4 * i)) > 1e-9) ++mine;
            }
        });
    }
    for (std::thread& hand : crew)
        hand.join();
    CHECK(differing == std::vector<int>(4, 0));
}

}  // namespace spoilbook::test
