// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <catch2/catch.hpp>
#include <cmath>
#include <initializer_list>
#include <numbers>
#include <vector>

#include "model/place/crs.h"
#include "model/place/polygon.h"

namespace spoilbook::test {

using Catch::Matchers::WithinAbs;

/// A closed ring from its corners, moved by an offset.
inline Ring ring(std::initializer_list<EastNorth> corners, double east = 0, double north = 0) {
    Ring result;
    for (const EastNorth& c : corners) {
        result.points.push_back({c.easting_m + east, c.northing_m + north});
    }
    result.points.push_back(result.points.front());
    return result;
}

inline Ring box(double west, double south, double east, double north) {
    return ring({{west, south}, {east, south}, {east, north}, {west, north}});
}

inline Area area_of(std::vector<Ring> rings) {
    return Area{{Polygon{std::move(rings)}}};
}

/// Straight out of the invented harbour: a ground 1.5 by 1.2 nautical miles with a hole about a wreck.
inline Area ground_with_wreck() {
    return area_of({box(711640, 5497370, 714418, 5499592), box(712900, 5498300, 713100, 5498500)});
}

/// The way round the place, in turns, by summed angles: nothing of the code's own crossing count.
inline bool enclosed_by_angles(const Ring& line, EastNorth place) {
    double turned = 0;
    for (std::size_t i = 0; i < line.points.size(); ++i) {
        const EastNorth a = line.points[i];
        const EastNorth b = line.points[(i + 1) % line.points.size()];
        const double from = std::atan2(a.northing_m - place.northing_m, a.easting_m - place.easting_m);
        const double to = std::atan2(b.northing_m - place.northing_m, b.easting_m - place.easting_m);
        turned += std::remainder(to - from, 2 * std::numbers::pi);
    }
    return std::lround(turned / (2 * std::numbers::pi)) % 2 != 0;
}

/// Distance to an edge by halving towards its nearest point (it is a convex function along the edge).
inline double distance_by_halving(EastNorth a, EastNorth b, EastNorth place) {
    const auto at = [&](double t) {
        return std::hypot(a.easting_m + t * (b.easting_m - a.easting_m) - place.easting_m,
                          a.northing_m + t * (b.northing_m - a.northing_m) - place.northing_m);
    };
    double low = 0, high = 1;
    for (int i = 0; i < 90; ++i) {
        const double third = (high - low) / 3;
        (at(low + third) < at(high - third) ? high : low) =
            at(low + third) < at(high - third) ? high - third : low + third;
    }
    return std::min({at(0), at(1), at((low + high) / 2)});
}

/// Signed distance the slow way.
inline double slow_signed_distance(const Area& area, EastNorth place) {
    bool inside = false;
    double nearest = INFINITY;
    for (const Polygon& part : area.parts) {
        bool in_part = enclosed_by_angles(part.rings.front(), place);
        for (std::size_t r = 0; r < part.rings.size(); ++r) {
            const Ring& line = part.rings[r];
            if (r > 0 && enclosed_by_angles(line, place)) in_part = false;
            for (std::size_t i = 1; i < line.points.size(); ++i) {
                nearest = std::min(nearest, distance_by_halving(line.points[i - 1], line.points[i], place));
            }
        }
        inside = inside || in_part;
    }
    return inside ? nearest : -nearest;
}

/// A wavy ring round a centre: as many corners as wanted, never crossing itself.
inline Ring wavy_ring(EastNorth centre, double radius_m, int corners) {
    Ring result;
    for (int i = 0; i < corners; ++i) {
        const double angle = 2 * std::numbers::pi * i / corners;
        const double r = radius_m * (1 + 0.3 * std::sin(5 * angle) + 0.05 * std::cos(31 * angle));
        result.points.push_back(
            {centre.easting_m + r * std::cos(angle), centre.northing_m + r * std::sin(angle)});
    }
    result.points.push_back(result.points.front());
    return result;
}

}  // namespace spoilbook::test
