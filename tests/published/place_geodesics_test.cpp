// SPDX-License-Identifier: GPL-3.0-or-later
// Hauls against GeographicLib's exact geodesics, computed now: by elliptic integrals, where model/place uses
// the series in the flattening that PROJ has.
#include <rapidcheck.h>
#include <rapidcheck/catch.h>

#include <GeographicLib/GeodesicExact.hpp>
#include <cmath>

#include "model/place/haul_distance.h"

using namespace spoilbook;

namespace {

/// What either may be off by, as its author says: 15 nm and 40 nm (GeographicLib 2.1, Geodesic.hpp,
/// GeodesicExact.hpp), rounded up.
constexpr double tolerance_m = 60e-9;

const GeographicLib::GeodesicExact& exact() {
    return GeographicLib::GeodesicExact::WGS84();
}

double between(double low, double high) {
    constexpr int steps = 2'000'000'000;
    return low + (high - low) * *rc::gen::inRange(0, steps) / steps;
}

/// Some lie on the equator, a pole or one of the meridians 0, 90 and 180.
LonLat anywhere() {
    LonLat place{between(-90, 90), between(-180, 180)};
    if (*rc::gen::inRange(0, 6) == 0) place.lat_deg = *rc::gen::element(-90.0, 0.0, 90.0);
    if (*rc::gen::inRange(0, 6) == 0) place.lon_deg = *rc::gen::element(-180.0, -90.0, 0.0, 90.0, 180.0);
    return place;
}

double exact_distance_m(LonLat from, LonLat to) {
    double distance_m = 0;
    exact().Inverse(from.lat_deg, from.lon_deg, to.lat_deg, to.lon_deg, distance_m);
    return distance_m;
}

/// That the way is as long as the other library's, and that going that course for that length leads there:
/// also where many courses are equally short, or nearly so.
void hold_against_exact(LonLat from, LonLat to) {
    const double distance_m = haul_distance_m(from, to), course = course_deg(from, to);
    RC_LOG() << from.lat_deg << ' ' << from.lon_deg << " to " << to.lat_deg << ' ' << to.lon_deg << ": "
             << distance_m << ", exact " << exact_distance_m(from, to) << '\n';
    RC_ASSERT(std::abs(distance_m - exact_distance_m(from, to)) <= tolerance_m);
    RC_ASSERT(course >= 0);
    RC_ASSERT(course < 360);
    LonLat end;
    exact().Direct(from.lat_deg, from.lon_deg, course, distance_m, end.lat_deg, end.lon_deg);
    // A course of 17 digits leaves 20 000 km with 0.7 nm a digit; the way out and this look add theirs.
    RC_ASSERT(exact_distance_m(end, to) <= 4 * tolerance_m);
}

LonLat moved(LonLat from, double azimuth, double distance_m) {
    LonLat to;
    exact().Direct(from.lat_deg, from.lon_deg, azimuth, distance_m, to.lat_deg, to.lon_deg);
    return to;
}

constexpr int pairs = 20;  // a case; RapidCheck makes 100 of them

}  // namespace

TEST_CASE("a haul is as long as another library says", "[place]") {
    rc::prop("between any two places", [] {
        for (int i = 0; i < pairs; ++i)
            hold_against_exact(anywhere(), anywhere());
    });

    rc::prop("from a millimetre to a thousand kilometres", [] {
        for (int i = 0; i < pairs; ++i) {
            const LonLat from = anywhere();
            hold_against_exact(from, moved(from, between(0, 360), std::pow(10.0, between(-3, 6))));
        }
    });

    rc::prop("to nearly the other end of the earth, where the way turns round", [] {
        for (int i = 0; i < pairs; ++i) {
            const LonLat from = anywhere();
            const double off = std::pow(10.0, between(-12, 0.5));
            const LonLat to{std::clamp(-from.lat_deg + off * between(-1, 1), -90.0, 90.0),
                            from.lon_deg + 180 + off * between(-1, 1)};
            hold_against_exact(from, to);
        }
    });

    rc::prop("across the 180th meridian, however its longitudes are written", [] {
        for (int i = 0; i < pairs; ++i) {
            const LonLat from{between(-89, 89), 180 - std::pow(10.0, between(-7, 1))};
            const LonLat to{from.lat_deg + between(-1, 1), 180 + std::pow(10.0, between(-7, 1))};
            const LonLat wrapped{to.lat_deg, to.lon_deg - 360};
            hold_against_exact(from, to);
            hold_against_exact(wrapped, from);
            // Taking 360 off costs the longitude its last digits: 3e-14 degrees, 3 nm.
            RC_ASSERT(std::abs(haul_distance_m(from, to) - haul_distance_m(from, wrapped)) <= tolerance_m);
        }
    });
}
