// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "model/bed/bed_grid.h"

namespace spoilbook {

/// How much of each pixel of a grid an area covers. Exact but for rounding: the area of the overlap, as a
/// pixel crossed by a claim's edge counts by its covered fraction. By signed areas under the edges, row by
/// row (common practice, no source); held against GEOS in the tests.
class Coverage {
 public:
    /// REQUIRES a sound area (why_invalid), on the grid's map.
    Coverage(const Area& area, const BedGrid& grid);

    /// The smallest window of the grid that holds every pixel touched; nothing where none is.
    [[nodiscard]] std::optional<GridWindow> window() const;
    /// The covered share, 0 to 1, of each pixel of a window, row by row.
    [[nodiscard]] std::vector<double> shares(const GridWindow& window) const;

 private:
    /// An edge downward in the grid (from.row < to.row); turn is +1 where what lies right of it is gained.
    struct Edge {
        GridPlace from, to;
        double turn = 1;
    };
    void add(const Ring& ring, bool is_hole, const BedGrid& grid);

    std::vector<Edge> edges_;
    int columns_, rows_;
};

}  // namespace spoilbook
