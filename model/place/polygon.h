// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/place/point.h"

namespace spoilbook {

/// A closed line: the last point repeats the first, as in GeoJSON. Either way round. A ring that is left
/// open is measured as if closed by a straight edge, and why_invalid() says that it is open.
struct Ring {
    std::vector<EastNorth> points;

    bool operator==(const Ring&) const = default;
};

/// One piece of ground: the first ring is its outer edge, the others are its holes.
struct Polygon {
    std::vector<Ring> rings;

    bool operator==(const Polygon&) const = default;
};

/// A disposal ground, cell, exclusion or claim: one or more polygons that do not overlap, in the book's
/// projected CRS. No parts: nothing.
struct Area {
    std::vector<Polygon> parts;

    bool operator==(const Area&) const = default;
};

/// A place closer than this to the boundary, m, is on it: a thousand times the last binary digit of a
/// northing, a thousandth of anything a receiver can tell.
inline constexpr double boundary_width_m = 1e-6;

/// m² on the map: outer rings less holes (shoelace, reduced to each ring's first point so that large
/// eastings lose no digits). The ground's own area is this / Crs::scale_factor squared.
double area_m2(const Area& area);

/// The boundary counts as inside, the boundary of a hole too: true where signed_distance_m is 0 or more.
/// Even-odd within each part. False in an empty area and for a place that is not known.
bool contains(const Area& area, EastNorth place);

/// Distance to the nearest piece of boundary, holes included, m on the map: positive inside, negative
/// outside, exactly 0 on the boundary (see boundary_width_m). Minus infinity for an empty area, NaN for a
/// place that is not known.
double signed_distance_m(const Area& area, EastNorth place);

/// The place in the area that is farthest from any edge, holes included (pole of inaccessibility). Its
/// distance is the greatest there is, to 1 mm or to a millionth of the area's extent, whichever is less;
/// the same area gives the same place, and where many are equally far, one of them. NaN for an empty area.
/// Common practice, no source: branch and bound over squares.
EastNorth farthest_inside(const Area& area);

/// Nothing where the area is sound; else its first fault as a sentence with the part, the ring and the
/// place: no points, too few points, an open ring, a coordinate that is not a number, a ring that crosses
/// or touches itself, a hole outside its outer ring, parts that overlap. Soundness is that of OGC Simple
/// Features (through GEOS); holes and parts may touch at single points. An empty area is a fault.
std::optional<std::string> why_invalid(const Area& area);

/// The ground with every exclusion taken out. What only touches the ground changes nothing; slivers thinner
/// than boundary_width_m are dropped; nothing left gives an empty area. Outer rings come out
/// counter-clockwise, holes clockwise. REQUIRES every area sound (why_invalid is empty, or the area is
/// empty); throws std::invalid_argument where the overlay cannot be computed.
Area without(const Area& ground, const std::vector<Area>& exclusions);

/// One area of everything that any of the areas covers; shared edges go. As without() in all else.
Area together(const std::vector<Area>& areas);

}  // namespace spoilbook
