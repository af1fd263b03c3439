// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/haul_distance.h"

#include <geodesic.h>

#include <limits>

namespace spoilbook {

double haul_distance_m(LonLat from, LonLat to) {
    if (!is_known(from) || !is_known(to)) return std::numeric_limits<double>::quiet_NaN();
    // WGS 84: NGA.STND.0036 (2014) table 3.1.
    geod_geodesic earth{};
    geod_init(&earth, 6378137.0, 1.0 / 298.257223563);
    double distance_m = 0;
    geod_inverse(&earth, from.lat_deg, from.lon_deg, to.lat_deg, to.lon_deg, &distance_m, nullptr, nullptr);
    return distance_m;
}

}  // namespace spoilbook
