// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <ogr_spatialref.h>

#include <memory>
#include <mutex>
#include <string>

#include "model/place/crs.h"

namespace spoilbook {

/// Inside place/ only: what a Crs holds. Set up once and then shared; PROJ's transformations keep scratch
/// memory, hence the lock.
struct CrsWay {
    using Transformation = std::unique_ptr<OGRCoordinateTransformation>;

    int epsg = 0;
    std::string name;
    std::string wkt;
    std::string datum_note;
    double equatorial_radius_m = 0;
    double eccentricity_squared = 0;
    Transformation from_wgs84, to_wgs84, from_own, to_own;
    mutable std::mutex lock;

    [[nodiscard]] std::vector<EastNorth> project(OGRCoordinateTransformation& way,
                                                 std::span<const LonLat> places) const;
    [[nodiscard]] std::vector<LonLat> unproject(OGRCoordinateTransformation& way,
                                                std::span<const EastNorth> places) const;

    /// How the map moves, m, for a metre east and for a metre north on the ellipsoid.
    struct Stretch {
        double east_x, east_y, north_x, north_y;
    };
    [[nodiscard]] Stretch stretch(EastNorth place) const;
};

}  // namespace spoilbook
