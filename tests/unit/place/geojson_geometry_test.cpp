// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/geojson_geometry.h"

#include "tests/unit/place/shapes.h"

namespace spoilbook::test {
namespace {

Crs utm_60_south() {
    return Crs::from_epsg(32760).value();
}

/// The corner points of a box in degrees, closed.
std::vector<std::pair<double, double>> degrees(double west, double south, double east, double north) {
    return {{west, south}, {east, south}, {east, north}, {west, north}, {west, south}};
}

void check_refused(const Checked<Area>& area, const std::string& where, const std::string& words) {
    REQUIRE_FALSE(area.ok());
    CHECK(area.refusals().front().code == "geometry");
    CHECK(area.refusals().front().where == where);
    CHECK_THAT(area.refusals().front().what, Catch::Contains(words));
}

}  // namespace

TEST_CASE("a ground given in degrees stands where its corners project to", "[place][geojson]") {
    const Crs crs = utm_60_south();
    const Area area = area_from_lon_lat({{degrees(179.50, -40.66, 179.53, -40.64)}}, crs).value();
    REQUIRE(area.parts.size() == 1);
    CHECK(area.parts[0].rings[0].points.size() == 5);
    CHECK(area.parts[0].rings[0].points[2] == crs.project({-40.64, 179.53}));
    // COMP: Planimeter (GeographicLib 2.1.2) on these corners, geodesic edges; scale from the map.
    const double scale = crs.scale_factor(crs.project({-40.65, 179.515}));
    CHECK_THAT(area_m2(area) / (scale * scale), WithinAbs(5635332.0, 0.5));
}

TEST_CASE("a ground in the book's CRS is taken as it stands, holes and parts too", "[place][geojson]") {
    const GeoJsonCoordinates given{
        {degrees(711640, 5497370, 711740, 5497470), degrees(711660, 5497390, 711680, 5497410)},
        {degrees(711840, 5497370, 711940, 5497470)}};
    const Area area = area_from_projected(given).value();
    CHECK(area_m2(area) == 20000 - 400);
    CHECK(area.parts.size() == 2);
    CHECK(area.parts[0].rings.size() == 2);
}

TEST_CASE("degrees given as metres, and metres given as degrees, are refused", "[place][geojson]") {
    check_refused(area_from_projected({{degrees(179.50, -40.66, 179.53, -40.64)}}), "", "these are degrees");
    check_refused(area_from_lon_lat({{degrees(711640, 5497370, 711740, 5497470)}}, utm_60_south()),
                  "part 1 ring 1 point 1", "is no place on earth");
    check_refused(area_from_lon_lat({{degrees(-40.66, 179.50, -40.64, 179.53)}}, utm_60_south()),
                  "part 1 ring 1 point 1", "is no place on earth");
    check_refused(area_from_lon_lat({{{{NAN, -40}, {179, -40}, {179, -41}, {NAN, -40}}}}, utm_60_south()),
                  "part 1 ring 1 point 1", "is no place on earth");
}

TEST_CASE("a ground that is not sound is refused in plain words", "[place][geojson]") {
    check_refused(area_from_lon_lat({}, utm_60_south()), "", "the area has no parts");
    check_refused(area_from_projected({}), "", "the area has no parts");
    check_refused(area_from_projected({{{{0, 0}, {1000, 1000}, {1000, 0}, {0, 1000}, {0, 0}}}}), "",
                  "the edges cross");
    check_refused(area_from_lon_lat({{{{179.5, -40.6}, {179.6, -40.6}, {179.6, -40.7}}}}, utm_60_south()), "",
                  "is not closed");
}

TEST_CASE("a ring over the 180th meridian is one ground, however its longitudes are written",
          "[place][geojson]") {
    const Crs crs = utm_60_south();
    const Area jumped = area_from_lon_lat({{degrees(179.98, -16.6, -179.97, -16.5)}}, crs).value();
    const Area straight = area_from_lon_lat({{degrees(179.98, -16.6, 180.03, -16.5)}}, crs).value();
    CHECK_THAT(area_m2(jumped), WithinAbs(area_m2(straight), 1e-3));
    // By hand: 0.05 degrees of longitude at 16.55 S is some 5.34 km, 0.1 of latitude some 11.06 km.
    CHECK_THAT(area_m2(jumped), WithinAbs(5.34e3 * 11.06e3, 0.2e6));
    for (const Area& area : {jumped, straight}) {
        CHECK(contains(area, crs.project({-16.55, 179.99})));
        CHECK(contains(area, crs.project({-16.55, 180.0})));
        CHECK(contains(area, crs.project({-16.55, -179.99})));
        CHECK_FALSE(contains(area, crs.project({-16.55, 179.97})));
        CHECK_FALSE(contains(area, crs.project({-16.55, -179.96})));
    }
}

TEST_CASE("parts cut along the 180th meridian are joined, since the cut is no boundary", "[place][geojson]") {
    const Crs crs = utm_60_south();
    const Area joined =
        area_from_lon_lat({{degrees(179.98, -16.6, 180, -16.5)}, {degrees(-180, -16.6, -179.97, -16.5)}}, crs)
            .value();
    CHECK(joined.parts.size() == 1);
    const Area whole = area_from_lon_lat({{degrees(179.98, -16.6, -179.97, -16.5)}}, crs).value();
    // The cut's end points lie on the sides of the whole, off their chord on the map by centimetres.
    CHECK_THAT(area_m2(joined), WithinAbs(area_m2(whole), 1500));
    const EastNorth on_the_cut = crs.project({-16.55, 180});
    CHECK_THAT(signed_distance_m(joined, on_the_cut), WithinAbs(2134, 10));
    CHECK_THAT(signed_distance_m(joined, on_the_cut), WithinAbs(signed_distance_m(whole, on_the_cut), 0.5));
}

TEST_CASE("a fault is not mended unseen by joining along the 180th meridian", "[place][geojson]") {
    const Crs crs = utm_60_south();
    check_refused(area_from_lon_lat(
                      {{degrees(179.98, -16.6, 180, -16.5)},
                       {{{-180, -16.6}, {-179.97, -16.5}, {-179.97, -16.6}, {-180, -16.5}, {-180, -16.6}}}},
                      crs),
                  "", "the edges cross");
    check_refused(area_from_lon_lat({{degrees(179.98, -16.6, 180, -16.5)},
                                     {degrees(-180, -16.6, -179.97, -16.5)},
                                     {degrees(-179.98, -16.58, -179.95, -16.55)}},
                                    crs),
                  "", "overlap");
}

TEST_CASE("a ground that the map tears apart is refused", "[place][geojson]") {
    // World Mercator (EPSG:3395) ends at the 180th meridian.
    check_refused(area_from_lon_lat({{degrees(179.98, -16.6, -179.97, -16.5)}}, Crs::from_epsg(3395).value()),
                  "part 1 ring 1 point 2", "is off the map of WGS 84 / World Mercator");
}

}  // namespace spoilbook::test
