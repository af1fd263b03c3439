// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "model/place/crs.h"
#include "model/place/polygon.h"
#include "model/unit/checked.h"

namespace spoilbook {

/// The book's reference system: its number where the harbour gives one, and the system itself where that
/// number is fit for a book.
struct MapGround {
    std::optional<int> epsg;
    std::optional<Crs> crs;

    /// "EPSG:32760"; empty where the harbour gives none.
    [[nodiscard]] std::string name() const;
};

/// The area of a stored outline (canonical GeoJSON geometry) in the book's metres. Refused where it is no
/// sound area; also where `crs_name` is blank (lon/lat) and the map has no system to bring it to metres,
/// but then only with the code "no-crs".
Checked<Area> area_of(const std::string& geometry, const std::string& crs_name, const MapGround& map);

}  // namespace spoilbook
