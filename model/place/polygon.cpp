// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/polygon.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace spoilbook {
namespace {

double ring_area_m2(const Ring& ring) {
    if (ring.points.empty()) return 0;
    const EastNorth origin = ring.points.front();
    double twice = 0;
    for (std::size_t i = 1; i + 1 < ring.points.size(); ++i) {
        const EastNorth a = ring.points[i];
        const EastNorth b = ring.points[i + 1];
        twice += (a.easting_m - origin.easting_m) * (b.northing_m - origin.northing_m) -
                 (b.easting_m - origin.easting_m) * (a.northing_m - origin.northing_m);
    }
    return std::abs(twice) / 2;
}

/// What one pass along a ring finds out about a place.
struct Look {
    bool enclosed = false;
    double nearest_squared_m2 = std::numeric_limits<double>::infinity();
};

/// Edges are taken relative to the place, so that the products below are of small numbers.
void look_along(double ax, double ay, double bx, double by, Look& look) {
    const double dx = bx - ax;
    const double dy = by - ay;
    const double length_squared = dx * dx + dy * dy;
    const double along =
        length_squared > 0 ? std::clamp(-(ax * dx + ay * dy) / length_squared, 0.0, 1.0) : 0.0;
    const double qx = ax + along * dx;
    const double qy = ay + along * dy;
    look.nearest_squared_m2 = std::min(look.nearest_squared_m2, qx * qx + qy * qy);

    // Half-open in northing, so that a ray through a corner crosses one of its two edges, not both.
    if ((ay > 0) != (by > 0) && ((ax * by - bx * ay > 0) == (by > ay))) look.enclosed = !look.enclosed;
}

void look_along(const Ring& ring, EastNorth place, Look& look) {
    if (ring.points.empty()) return;
    double ax = ring.points.back().easting_m - place.easting_m;
    double ay = ring.points.back().northing_m - place.northing_m;
    for (const EastNorth& point : ring.points) {
        const double bx = point.easting_m - place.easting_m;
        const double by = point.northing_m - place.northing_m;
        look_along(ax, ay, bx, by, look);
        ax = bx;
        ay = by;
    }
}

}  // namespace

double area_m2(const Area& area) {
    double sum = 0;
    for (const Polygon& part : area.parts) {
        for (std::size_t i = 0; i < part.rings.size(); ++i) {
            sum += i == 0 ? ring_area_m2(part.rings[i]) : -ring_area_m2(part.rings[i]);
        }
    }
    return sum;
}

bool contains(const Area& area, EastNorth place) {
    return signed_distance_m(area, place) >= 0;
}

double signed_distance_m(const Area& area, EastNorth place) {
    if (!is_known(place)) return std::numeric_limits<double>::quiet_NaN();
    bool inside = false;
    double nearest_squared = std::numeric_limits<double>::infinity();
    for (const Polygon& part : area.parts) {
        Look look;
        for (const Ring& ring : part.rings)
            look_along(ring, place, look);
        inside = inside || look.enclosed;
        nearest_squared = std::min(nearest_squared, look.nearest_squared_m2);
    }
    const double distance = std::sqrt(nearest_squared);
    if (distance <= boundary_width_m) return 0;
    return inside ? distance : -distance;
}

}  // namespace spoilbook
