// SPDX-License-Identifier: GPL-3.0-or-later
// What holds for every area and every place, on areas that RapidCheck makes up.
#include <rapidcheck.h>
#include <rapidcheck/catch.h>

#include <cmath>

#include "model/place/geojson_geometry.h"
#include "model/place/haul_distance.h"
#include "model/place/polygon.h"
#include "model/place/verdict.h"

namespace spoilbook::test {
namespace {

/// A number of millimetres, as metres.
rc::Gen<double> metres(int low, int high) {
    return rc::gen::map(rc::gen::inRange(low * 1000, high * 1000), [](int mm) { return mm / 1000.0; });
}

rc::Gen<EastNorth> any_place() {
    return rc::gen::construct<EastNorth>(metres(-300, 300), metres(-300, 300));
}

/// A star about a centre: sound by the way it is made.
Ring any_star(double east, double north, int least_m, int most_m) {
    const int corners = *rc::gen::inRange(3, 25);
    Ring ring;
    for (int i = 0; i < corners; ++i) {
        const double radius = *metres(least_m, most_m);
        const double angle = 2 * M_PI * i / corners;
        ring.points.push_back({east + radius * std::cos(angle), north + radius * std::sin(angle)});
    }
    ring.points.push_back(ring.points.front());
    return ring;
}

/// A star, perhaps with a small star as its hole, perhaps with a second part far off.
Area any_area() {
    Area area{{Polygon{{any_star(0, 0, 100, 200)}}}};
    // The hole stays within 20 m of the centre, and a triangle of 100 m radius holds a circle of 50 m.
    if (*rc::gen::arbitrary<bool>()) area.parts[0].rings.push_back(any_star(0, 0, 5, 20));
    if (*rc::gen::arbitrary<bool>()) area.parts.push_back(Polygon{{any_star(500, 0, 10, 200)}});
    return area;
}

bool edges_cross(EastNorth a, EastNorth b, EastNorth c, EastNorth d) {
    const auto side = [](EastNorth p, EastNorth q, EastNorth r) {
        const double cross = (q.easting_m - p.easting_m) * (r.northing_m - p.northing_m) -
                             (q.northing_m - p.northing_m) * (r.easting_m - p.easting_m);
        return (cross > 0) - (cross < 0);
    };
    return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

}  // namespace

TEST_CASE("for every area", "[place][property]") {
    rc::prop("a star with a hole and a second part is sound", [] { RC_ASSERT(!why_invalid(any_area())); });

    rc::prop("distance changes by no more than a metre a metre", [] {
        const Area area = any_area();
        const EastNorth a = *any_place(), b = *any_place();
        const double apart = std::hypot(a.easting_m - b.easting_m, a.northing_m - b.northing_m);
        RC_ASSERT(std::abs(signed_distance_m(area, a) - signed_distance_m(area, b)) <=
                  apart + 2 * boundary_width_m);
    });

    rc::prop("a place is contained where its distance is not negative", [] {
        const Area area = any_area();
        const EastNorth place = *any_place();
        RC_ASSERT(contains(area, place) == (signed_distance_m(area, place) >= 0));
    });

    rc::prop("every corner lies on the boundary", [] {
        const Area area = any_area();
        for (const Polygon& part : area.parts) {
            for (const Ring& ring : part.rings) {
                for (const EastNorth& corner : ring.points)
                    RC_ASSERT(signed_distance_m(area, corner) == 0);
            }
        }
    });

    rc::prop("moving area and place together changes nothing that a receiver can tell", [] {
        const Area area = any_area();
        const EastNorth place = *any_place();
        Area moved = area;
        for (Polygon& part : moved.parts) {
            for (Ring& ring : part.rings) {
                for (EastNorth& corner : ring.points) {
                    corner = {corner.easting_m + 711640, corner.northing_m + 5497370};
                }
            }
        }
        RC_ASSERT(std::abs(area_m2(area) - area_m2(moved)) < 1e-3);
        RC_ASSERT(std::abs(signed_distance_m(area, place) -
                           signed_distance_m(moved, {place.easting_m + 711640,
                                                     place.northing_m + 5497370})) <= 2 * boundary_width_m);
    });

    rc::prop("no made-up place is farther inside than the farthest", [] {
        const Area area = any_area();
        const double farthest = signed_distance_m(area, farthest_inside(area));
        for (int i = 0; i < 30; ++i)
            RC_ASSERT(signed_distance_m(area, *any_place()) <= farthest + 0.001);
    });
}

TEST_CASE("for every cut", "[place][property]") {
    rc::prop("what is left and what is out make the whole", [] {
        const Area ground{{Polygon{{any_star(0, 0, 100, 200)}}}};
        const Area out{{Polygon{{any_star(*metres(-150, 150), *metres(-150, 150), 10, 150)}}}};
        const double left = area_m2(without(ground, {out}));
        const double other = area_m2(without(out, {ground}));
        const double both = area_m2(together({ground, out}));
        RC_ASSERT(std::abs(left + area_m2(out) - both) < 1e-3);
        RC_ASSERT(std::abs(other + area_m2(ground) - both) < 1e-3);
    });

    rc::prop("a place is left where it is in the ground and in no exclusion", [] {
        const Area ground = any_area();
        const Area out = any_area();
        const EastNorth place = *any_place();
        const double in_ground = signed_distance_m(ground, place);
        const double in_out = signed_distance_m(out, place);
        RC_PRE(std::abs(in_ground) > 1e-3 && std::abs(in_out) > 1e-3);
        RC_ASSERT(contains(without(ground, {out}), place) == (in_ground > 0 && in_out < 0));
    });
}

TEST_CASE("for every ring drawn at random", "[place][property]") {
    rc::prop("one whose edges cross is refused", [] {
        const int corners = *rc::gen::inRange(4, 9);
        Ring ring;
        for (int i = 0; i < corners; ++i)
            ring.points.push_back(*any_place());
        ring.points.push_back(ring.points.front());
        bool crossing = false;
        for (std::size_t i = 1; i < ring.points.size(); ++i) {
            for (std::size_t j = i + 1; j < ring.points.size(); ++j) {
                crossing = crossing || edges_cross(ring.points[i - 1], ring.points[i], ring.points[j - 1],
                                                   ring.points[j]);
            }
        }
        RC_PRE(crossing);
        RC_ASSERT(why_invalid(Area{{Polygon{{ring}}}}).has_value());
    });
}

TEST_CASE("for every position on the map", "[place][property]") {
    const Crs utm = Crs::from_epsg(32760).value();

    rc::prop("there and back again is the same position", [&] {
        const LonLat place{*metres(-79, -1), *metres(174, 180)};
        const LonLat back = utm.unproject(utm.project(place));
        RC_ASSERT(std::abs(back.lat_deg - place.lat_deg) < 1e-10);
        RC_ASSERT(std::abs(back.lon_deg - place.lon_deg) < 1e-10);
    });

    rc::prop("a short way on the map is the way on the ellipsoid times the scale", [&] {
        const LonLat from{*metres(-79, -1), *metres(174, 180)};
        const LonLat to{from.lat_deg + *metres(-1, 1) * 1e-3, from.lon_deg + *metres(-1, 1) * 1e-3};
        const EastNorth a = utm.project(from), b = utm.project(to);
        const double scale =
            utm.scale_factor({(a.easting_m + b.easting_m) / 2, (a.northing_m + b.northing_m) / 2});
        const double map = std::hypot(a.easting_m - b.easting_m, a.northing_m - b.northing_m);
        RC_ASSERT(std::abs(map - scale * haul_distance_m(from, to)) < 1e-5);
    });

    rc::prop("a haul is as long there as back, and no longer by way of a third place", [] {
        const auto any = [] { return LonLat{*metres(-90, 90), *metres(-180, 180)}; };
        const LonLat a = any(), b = any(), c = any();
        RC_ASSERT(std::abs(haul_distance_m(a, b) - haul_distance_m(b, a)) < 1e-6);
        RC_ASSERT(haul_distance_m(a, b) <= haul_distance_m(a, c) + haul_distance_m(c, b) + 1e-6);
    });
}

TEST_CASE("for every distance and uncertainty", "[place][property]") {
    rc::prop("the other side has the other verdict", [] {
        const double distance = *metres(-200, 200), u = *metres(0, 50);
        RC_PRE(distance != 0);
        const PlaceVerdict here = verdict(distance, u), there = verdict(-distance, u);
        RC_ASSERT((here == PlaceVerdict::inside) == (there == PlaceVerdict::outside));
        RC_ASSERT((here == PlaceVerdict::cannot_tell) == (there == PlaceVerdict::cannot_tell));
    });
}

}  // namespace spoilbook::test
