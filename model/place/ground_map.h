// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <unordered_map>

#include "model/place/crs.h"
#include "model/place/polygon.h"
#include "model/record/release_view.h"

namespace spoilbook {

/// A place's own standard uncertainty where none is recorded, m (68 %).
inline constexpr double usual_position_u_m = 10;

/// The grounds and cells of a season in its projected CRS, and where positions lie in them. Shapes that do
/// not read are left out: they were refused when the book took them.
class GroundMap {
 public:
    explicit GroundMap(const Season& season);

    /// The ground less its exclusions; null where there is none of that id.
    [[nodiscard]] const Area* open_ground(const Id& ground) const;
    [[nodiscard]] const Area* cell(const Id& cell) const;
    /// The cell less its ground's exclusions; empty where there is none of that id.
    [[nodiscard]] Area open_cell(const Id& id) const;
    /// Where the doors opened, on the map; nothing where no position is recorded.
    [[nodiscard]] std::optional<EastNorth> place_of(const ReleaseView& release) const;
    /// The cell of the release's ground that holds its position; nil where none does.
    [[nodiscard]] Id cell_at(const ReleaseView& release) const;
    [[nodiscard]] Id cell_holding(const Id& ground, EastNorth place) const;
    [[nodiscard]] const std::optional<Crs>& crs() const { return crs_; }

 private:
    std::optional<Crs> crs_;
    std::unordered_map<Id, Area> open_grounds_;
    std::unordered_map<Id, Area> parts_;
    std::unordered_map<Id, std::vector<Id>> cells_of_;
    std::unordered_map<Id, std::vector<Area>> exclusions_of_;
    std::unordered_map<Id, Id> ground_of_;
};

/// Reads a geometry kept in the book (GeoJSON text, and its crs: blank for lon/lat) into the map's CRS.
Checked<Area> area_from_text(const std::string& geometry, const std::string& crs_text, const Crs& crs);

}  // namespace spoilbook
