// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/haul_distance.h"

#include <geodesic.h>

#include <limits>
#include <utility>

namespace spoilbook {

namespace {

/// Length and course of the shortest way.
std::pair<double, double> shortest_way(LonLat from, LonLat to) {
    const double unknown = std::numeric_limits<double>::quiet_NaN();
    if (!is_known(from) || !is_known(to)) return {unknown, unknown};
    // WGS 84: NGA.STND.0036 (2014) table 3.1.
    geod_geodesic earth{};
    geod_init(&earth, 6378137.0, 1.0 / 298.257223563);
    double distance_m = 0, azimuth_deg = 0;
    geod_inverse(&earth, from.lat_deg, from.lon_deg, to.lat_deg, to.lon_deg, &distance_m, &azimuth_deg,
                 nullptr);
    return {distance_m, azimuth_deg};
}

}  // namespace

double haul_distance_m(LonLat from, LonLat to) {
    return shortest_way(from, to).first;
}

double course_deg(LonLat from, LonLat to) {
    const double azimuth_deg = shortest_way(from, to).second;
    const double course = azimuth_deg < 0 ? azimuth_deg + 360 : azimuth_deg;
    // A hair west of north rounds to 360 when it is added.
    return course < 360 ? course : 0;
}

}  // namespace spoilbook
