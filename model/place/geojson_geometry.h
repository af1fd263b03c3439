// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <utility>
#include <vector>

#include "model/place/crs.h"
#include "model/place/polygon.h"
#include "model/unit/checked.h"

namespace spoilbook {

/// The coordinates of a GeoJSON MultiPolygon as they stand in the file: parts, rings, points, each point
/// {first, second} = {longitude, latitude} or {easting, northing}. A Polygon is one part.
using GeoJsonCoordinates = std::vector<std::vector<std::vector<std::pair<double, double>>>>;

/// An area given in degrees of WGS 84 (RFC 7946). Every vertex is projected, none is added. Longitudes from
/// -360 to 360 are taken, and a ring whose longitude jumps by more than 180 is read as going over the 180th
/// meridian; parts cut along that meridian (RFC 7946, 3.1.9) are joined again, since the cut is no boundary.
/// Refuses latitudes and longitudes out of range, vertices and edges that the CRS's map cannot hold, and
/// whatever why_invalid() finds. Refusal code "geometry", where "part 1 ring 1 point 4": the caller puts file
/// and feature before it.
Checked<Area> area_from_lon_lat(const GeoJsonCoordinates& coordinates, const Crs& crs);

/// An area given in the book's own CRS, m. Refuses what why_invalid() finds, and coordinates that are all
/// within ±180 and ±90: degrees taken for metres.
Checked<Area> area_from_projected(const GeoJsonCoordinates& coordinates);

}  // namespace spoilbook
