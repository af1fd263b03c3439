// SPDX-License-Identifier: GPL-3.0-or-later
// Inside, outside and how far, against GEOS on areas made up now; degrees reach GEOS's plane by
// GeographicLib's exact transverse Mercator, where model/place uses PROJ. Some thousand places each.
#include <geos_c.h>
#include <rapidcheck.h>
#include <rapidcheck/catch.h>

#include <cmath>

#include "model/place/geojson_geometry.h"
#include "model/place/verdict.h"
#include "tests/published/any_star.h"
#include "tests/published/geos_plane.h"

using namespace spoilbook;
using spoilbook::test::any_metres;
using spoilbook::test::any_star;
using spoilbook::test::GeosArea;
using spoilbook::test::Zone32760;

namespace {

/// On one plane both measure the same edges: what is left is the last digit of a northing of 5 500 km, 1e-9
/// m, a few times over.
constexpr double same_plane_m = 1e-8;
/// By two projections: some nanometres each, and as much from degrees of 15 digits.
constexpr double two_planes_m = 1e-7;

/// One to four parts with up to four holes each, or a jagged one without: metres about nothing.
GeoJsonCoordinates any_area() {
    GeoJsonCoordinates area;
    const int parts = *rc::gen::inRange(1, 5);
    for (int part = 0; part < parts; ++part) {
        const double east = 560.0 * (part % 2), north = 560.0 * (part / 2);
        auto& rings = area.emplace_back();
        const int holes = *rc::gen::inRange(-1, 5);
        if (holes < 0) {
            rings.push_back(any_star(east, north, 5, 275, 3, 40));
            continue;
        }
        // Eight corners from 110 m up hold a circle of 100 m, and that the holes.
        rings.push_back(any_star(east, north, 110, 275, 8, 40));
        for (int hole = 0; hole < holes; ++hole)
            rings.push_back(
                any_star(east + (hole % 2 ? 40 : -40), north + (hole < 2 ? 40 : -40), 2, 35, 3, 40));
    }
    return area;
}

template <class Change>
GeoJsonCoordinates changed(GeoJsonCoordinates area, Change change) {
    for (auto& part : area) {
        for (auto& ring : part) {
            for (auto& point : ring)
                point = change(point);
        }
    }
    return area;
}

/// Anywhere about, or close by an edge, or on a corner.
std::pair<double, double> any_place(const GeoJsonCoordinates& area) {
    const int how = *rc::gen::inRange(0, 4);
    if (how < 2) return {any_metres(-400, 1000), any_metres(-400, 1000)};
    const auto& part = area[*rc::gen::inRange<std::size_t>(0, area.size())];
    const auto& ring = part[*rc::gen::inRange<std::size_t>(0, part.size())];
    const auto corner = *rc::gen::inRange<std::size_t>(1, ring.size());
    if (how == 2) return ring[corner];
    const auto [ax, ay] = ring[corner - 1];
    const auto [bx, by] = ring[corner];
    const double along = any_metres(0, 1), off = std::pow(10.0, any_metres(-5, 1));
    return {ax + along * (bx - ax) + off * any_metres(-1, 1),
            ay + along * (by - ay) + off * any_metres(-1, 1)};
}

/// Distance, inside and verdict of one place, by both.
void hold_against_geos(const Area& ours, EastNorth place, const GeosArea& theirs, EastNorth their_place,
                       double tolerance_m) {
    const double distance_m = signed_distance_m(ours, place);
    const double theirs_m = theirs.signed_distance_m(their_place);
    RC_LOG() << "at " << place.easting_m << ' ' << place.northing_m << ": " << distance_m << ", GEOS "
             << theirs_m << '\n';
    RC_ASSERT(std::abs(distance_m - theirs_m) <= tolerance_m + (distance_m == 0 ? boundary_width_m : 0));
    if (std::abs(theirs_m) > boundary_width_m + tolerance_m)
        RC_ASSERT(contains(ours, place) == theirs.covers(their_place));
    const double u_m = any_metres(0, 60);
    if (std::abs(std::abs(theirs_m) - 2 * u_m) <= boundary_width_m + tolerance_m) return;
    const PlaceVerdict expected = theirs.boundary_within(their_place, 2 * u_m) ? PlaceVerdict::cannot_tell
                                  : theirs.covers(their_place)                 ? PlaceVerdict::inside
                                                                               : PlaceVerdict::outside;
    RC_ASSERT(verdict(distance_m, u_m) == expected);
}

constexpr int places = 40;  // an area; RapidCheck makes 100 of them

/// The area about a centre in degrees: a degree is as long as on a sphere, which is near enough for shapes.
GeoJsonCoordinates in_degrees(const GeoJsonCoordinates& area, LonLat centre) {
    return changed(area, [&](std::pair<double, double> at) {
        const double lat = centre.lat_deg + at.second / 111200;
        return std::pair(centre.lon_deg + at.first / (111200 * std::cos(centre.lat_deg * M_PI / 180)), lat);
    });
}

}  // namespace

TEST_CASE("GEOS finds a place where we do", "[place]") {
    rc::prop("in eastings and northings", [] {
        const auto shape =
            changed(any_area(), [](auto at) { return std::pair(at.first + 711640, at.second + 5497370); });
        const auto area = area_from_projected(shape);
        RC_ASSERT(bool(area));
        const GeosArea geos(shape);
        RC_ASSERT(std::abs(area_m2(*area) - geos.area_m2()) <= 1e-6 * geos.area_m2());
        const auto about_nothing =
            changed(shape, [](auto at) { return std::pair(at.first - 711640, at.second - 5497370); });
        for (int i = 0; i < places; ++i) {
            const auto [east, north] = any_place(about_nothing);
            const EastNorth place{east + 711640, north + 5497370};
            hold_against_geos(*area, place, geos, place, same_plane_m);
        }
    });
}

namespace {

/// In UTM zone 60 south about `centre`, the file's degrees written by `write` from longitudes 0 to 360.
template <class Write>
void hold_in_degrees(LonLat centre, Write write) {
    static const Crs crs = *Crs::from_epsg(32760);
    const auto metres_about = any_area();
    const auto degrees = in_degrees(metres_about, centre);
    const auto [as_written, as_meant] = write(degrees);
    const auto area = area_from_lon_lat(as_written, crs);
    if (!area) RC_LOG() << area.refusals().front().what << '\n';
    RC_ASSERT(bool(area));
    const GeosArea geos(changed(as_meant, [](auto at) { return Zone32760::project(at); }));
    for (int i = 0; i < places; ++i) {
        const auto [lon, lat] = in_degrees({{{any_place(metres_about)}}}, centre)[0][0][0];
        const auto [east, north] = Zone32760::project({lon, lat});
        const LonLat written{lat, lon > 180 && *rc::gen::arbitrary<bool>() ? lon - 360 : lon};
        hold_against_geos(*area, crs.project(written), geos, {east, north}, two_planes_m);
    }
}

/// As RFC 7946 has it: longitudes from -180 to 180, a ring jumping from one end to the other.
std::pair<double, double> wrapped(std::pair<double, double> at) {
    return {at.first > 180 ? at.first - 360 : at.first, at.second};
}

LonLat near_180() {
    return {any_metres(-70, -1), 180 + any_metres(-8, 8) / 1000};
}

}  // namespace

TEST_CASE("GEOS finds a place in degrees where we do", "[place]") {
    rc::prop("away from the 180th meridian", [] {
        hold_in_degrees({any_metres(-70, -1), any_metres(174.1, 179.9)},
                        [](const GeoJsonCoordinates& area) { return std::pair(area, area); });
    });

    rc::prop("across it, with longitudes that go on past 180", [] {
        hold_in_degrees(near_180(), [](const GeoJsonCoordinates& area) { return std::pair(area, area); });
    });

    rc::prop("across it, with longitudes that jump", [] {
        hold_in_degrees(near_180(), [](const GeoJsonCoordinates& area) {
            return std::pair(changed(area, wrapped), area);
        });
    });

    rc::prop("across it, cut into parts along it", [] {
        hold_in_degrees(near_180(), [](const GeoJsonCoordinates& area) {
            const auto cut = test::cut_along_180(area);
            return std::pair(cut.parts, cut.whole);
        });
    });
}
