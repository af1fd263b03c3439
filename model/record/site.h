// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/record/define.h"

namespace spoilbook {

/// Geometry is kept as given: `geometry` is the GeoJSON geometry, `crs` what its coordinates are
/// ("EPSG:32760" for the book's own system, blank for WGS 84 longitude and latitude).
struct Claim {
    Id id;
    std::string claim, name;
    std::optional<double> target_level_m, allowance_m, batter_h_per_v;
    Id material;
    std::optional<double> planned_in_situ_m3;
    std::string planned_start, planned_finish;  ///< days
    std::string geometry, crs;
};

struct Ground {
    Id id;
    std::string ground, geometry, crs;
};

/// A part of a ground: a cell, or an exclusion inside which nothing may be released.
struct Cell {
    Id id;
    std::string cell;
    Id ground;
    std::string kind;  ///< cell, exclusion
    std::string geometry, crs;
};

template <>
const Definition<Claim>& definition<Claim>();
template <>
const Definition<Ground>& definition<Ground>();
template <>
const Definition<Cell>& definition<Cell>();

}  // namespace spoilbook
