// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <geos_c.h>

#include <memory>

#include "model/place/geojson_geometry.h"

namespace spoilbook::test {

/// EPSG:32760 (UTM zone 60 south, WGS 84) by GeographicLib's exact transverse Mercator: 8 nm.
struct Zone32760 {
    /// {longitude, latitude} to {easting, northing}, m. Longitudes may go on past 180.
    static std::pair<double, double> project(std::pair<double, double> lon_lat);
};

using GeosShape = std::unique_ptr<GEOSGeometry, decltype(&GEOSGeom_destroy)>;

/// An area as GEOS has it, on a plane.
class GeosArea {
 public:
    explicit GeosArea(const GeoJsonCoordinates& coordinates);

    [[nodiscard]] double area_m2() const;
    [[nodiscard]] double overlap_m2(const GeosArea& other) const;
    /// Inside or on the boundary.
    [[nodiscard]] bool covers(EastNorth place) const;
    /// To the nearest boundary, negative outside; no width to it.
    [[nodiscard]] double signed_distance_m(EastNorth place) const;
    [[nodiscard]] bool boundary_within(EastNorth place, double distance_m) const;

 private:
    GeosShape shape_, boundary_;
};

/// Degrees cut along the 180th meridian as RFC 7946 (3.1.9) has it, and the same area uncut, longitudes going
/// on past 180, with a vertex wherever it crosses.
struct Cut {
    GeoJsonCoordinates parts, whole;
};

/// Longitudes from 0 to 360.
Cut cut_along_180(const GeoJsonCoordinates& area);

}  // namespace spoilbook::test
