// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <ogr_geometry.h>

#include <memory>
#include <string>

#include "model/place/polygon.h"

namespace spoilbook {

/// Inside place/ only: the same shape as OGR has it, and back.

/// Rings are closed where they were left open.
std::unique_ptr<OGRMultiPolygon> to_ogr(const Area& area);

/// Takes the polygons out of any geometry, and leaves lines, points and slivers thinner than
/// boundary_width_m. Outer rings counter-clockwise, holes clockwise.
Area from_ogr(const OGRGeometry& geometry);

/// GDAL reports by calling a handler; while this stands, on this thread, it reports into a string instead
/// of standard error.
class HeardGdal {
 public:
    HeardGdal();
    ~HeardGdal();
    HeardGdal(const HeardGdal&) = delete;
    HeardGdal& operator=(const HeardGdal&) = delete;

    /// The last message, or an empty text.
    [[nodiscard]] const std::string& said() const { return said_; }

 private:
    std::string said_;
};

}  // namespace spoilbook
