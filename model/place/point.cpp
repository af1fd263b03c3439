// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/point.h"

#include <cmath>

namespace spoilbook {

bool is_known(EastNorth place) {
    return std::isfinite(place.easting_m) && std::isfinite(place.northing_m);
}

bool is_known(LonLat place) {
    return std::isfinite(place.lon_deg) && std::isfinite(place.lat_deg) && std::abs(place.lat_deg) <= 90.0;
}

}  // namespace spoilbook
