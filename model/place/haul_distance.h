// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/place/point.h"

namespace spoilbook {

/// Shortest way over the WGS 84 ellipsoid, m, good to some nanometres for any pair of places. NaN where
/// either is not known. Source: C. F. F. Karney, Algorithms for geodesics, J. Geodesy 87 (2013) 43-55, as
/// in PROJ's geodesic.h.
double haul_distance_m(LonLat from, LonLat to);

/// True course at the start of that way, degrees from north, 0 or more and less than 360. NaN where either is
/// not known; any course where both are the same place. Same source.
double course_deg(LonLat from, LonLat to);

}  // namespace spoilbook
