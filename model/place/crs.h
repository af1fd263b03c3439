// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <span>
#include <string>
#include <vector>

#include "model/place/point.h"
#include "model/unit/checked.h"

namespace spoilbook {

struct CrsWay;

/// The book's projected CRS: eastings and northings in metres, in that order whatever order the EPSG
/// registry lists them in. Cheap to copy (copies share one transformation behind a lock); every member
/// function may be called from several threads at once.
class Crs {
 public:
    /// Refuses a code that is not known, a geographic or other CRS that is not projected, and one whose
    /// axes are not in metres or do not point east and north. Refusal code "crs", where "EPSG:code".
    static Checked<Crs> from_epsg(int code);

    [[nodiscard]] int epsg() const;
    /// As the EPSG registry has it: "NZGD2000 / New Zealand Transverse Mercator 2000".
    [[nodiscard]] const std::string& name() const;
    /// The CRS as WKT (version 1, which every format GDAL writes can carry).
    [[nodiscard]] const std::string& wkt() const;
    /// Empty where the way from WGS 84 to this CRS's datum is published; else a sentence that says that the
    /// two datums were taken as one, and that positions may be off by some hundred metres for it.
    [[nodiscard]] const std::string& datum_note() const;

    /// NaN (see is_known) where the position is not known or the map does not reach it. Round trip with
    /// unproject: within 0.1 mm where the map is used as intended. Source: PROJ, EPSG registry.
    [[nodiscard]] EastNorth project(LonLat place) const;
    [[nodiscard]] LonLat unproject(EastNorth place) const;
    /// As project() of each, in one go: the way to do many.
    [[nodiscard]] std::vector<EastNorth> project(std::span<const LonLat> places) const;
    [[nodiscard]] std::vector<LonLat> unproject(std::span<const EastNorth> places) const;

    /// The projection alone, for latitude and longitude on the CRS's own datum (a list of marks printed on
    /// it, a published check). The same as project() where that datum is WGS 84.
    [[nodiscard]] EastNorth project_own_datum(LonLat place) const;
    [[nodiscard]] LonLat unproject_own_datum(EastNorth place) const;

    /// Map metres for a metre on the ellipsoid, there: the square root of the areal scale, which on a
    /// conformal map is the scale in every direction. By central differences, good to 1e-8. NaN off the map.
    [[nodiscard]] double scale_factor(EastNorth place) const;
    /// Direction of true north on the map, there, degrees clockwise from grid north:
    /// grid bearing = true bearing + this. Good to 1e-6. NaN off the map.
    [[nodiscard]] double true_north_deg(EastNorth place) const;

 private:
    explicit Crs(std::shared_ptr<const CrsWay> way);
    std::shared_ptr<const CrsWay> way_;
};

}  // namespace spoilbook
