// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace spoilbook {

/// A position on the earth, WGS 84, decimal degrees; south and west are negative.
struct LonLat {
    double lat_deg = 0;
    double lon_deg = 0;

    bool operator==(const LonLat&) const = default;
};

/// A position in the book's projected CRS, metres.
struct EastNorth {
    double easting_m = 0;
    double northing_m = 0;

    bool operator==(const EastNorth&) const = default;
};

/// False where a position could not be computed (Crs gives NaN for a place that its map does not hold).
bool is_known(EastNorth place);
/// False for NaN, infinity, or a latitude beyond the poles.
bool is_known(LonLat place);

}  // namespace spoilbook
