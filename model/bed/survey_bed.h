// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>

#include "model/bed/bed_grid.h"
#include "model/bed/s44.h"
#include "model/record/watched_water.h"

namespace spoilbook {

/// The bed as one survey found it: levels, m relative to the book's vertical datum and positive up, and how
/// sure each is.
class SurveyBed {
 public:
    /// Refused, where "survey SV-1": the grid itself (BedGrid); that the survey does not say which way its
    /// numbers grow and neither does the format, or says other than the format; an order that is none of
    /// S-44's. Throws what `bytes` throws.
    static Checked<SurveyBed> open(const Survey& survey, const ByteSource& bytes, const Crs& book);

    [[nodiscard]] const BedGrid& grid() const { return grid_; }
    [[nodiscard]] const GridMap& map() const { return map_; }
    /// Levels of a window row by row, NaN where nothing was surveyed.
    [[nodiscard]] std::vector<double> levels(const GridWindow& window) const;
    /// Standard uncertainty of a level, m: the survey's u_m, else its order's at that depth; nothing where
    /// neither is recorded.
    [[nodiscard]] std::optional<double> u_at(double level_m) const;

 private:
    SurveyBed(BedGrid grid, GridMap map) : grid_(std::move(grid)), map_(std::move(map)) {}

    BedGrid grid_;
    GridMap map_;
    double sign_ = 1, offset_m_ = 0;
    std::optional<double> u_m_;
    std::optional<S44Order> order_;
};

/// Part of a bed in the hands of walk(): levels and covered shares of a window, row by row.
struct BedStrip {
    GridWindow window;
    const std::vector<double>& levels_m;
    const std::vector<double>& shares;
};

/// Shows the part of a surveyed bed that an area touches, strip by strip, as long as `each` answers true:
/// memory holds one strip. `each` may look no longer than the call. Nothing where the grid lies elsewhere.
/// `area` lies on the grid's own map (GridMap::on_grid). Refused, code "grid": over 400 million pixels of the
/// area; a file that does not read to its end.
Checked<Done> walk(const SurveyBed& bed, const Area& area, const std::function<bool(const BedStrip&)>& each);

/// Whether any pixel that an area of the book's map touches was surveyed. What does not read shows nothing.
bool shows(const SurveyBed& bed, const Area& area);

}  // namespace spoilbook
