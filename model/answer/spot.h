// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/place/ground_map.h"
#include "model/place/verdict.h"
#include "model/record/kind.h"
#include "model/record/value.h"

namespace spoilbook {

/// Farther than this outside its ground, m, a position is odd enough to be asked about: some four tows of the
/// usual length. Common practice, no source.
inline constexpr double odd_distance_m = 50'000;

/// What would bring an odd position near the ground.
enum class Slip { none, latitude_sign, longitude_sign, both_signs, exchanged };

/// A position as it is typed or received, held against one ground, holes and exclusions out.
struct Spot {
    std::string ground;       ///< the one asked about, else the nearest; empty: none is on the map
    std::string cell;         ///< of that ground, the one that holds the position; may be empty
    double distance_m = 0;    ///< to the ground's edge, positive inside; NaN where there is no ground
    double position_u_m = 0;  ///< standard uncertainty (68 %) that was judged with
    PlaceVerdict verdict = PlaceVerdict::cannot_tell;
    bool odd = false;  ///< more than odd_distance_m outside
    Slip slip = Slip::none;
};

/// Where a position lies. `position_u_m` blank: usual_position_u_m. `ground` nil: the nearest of all. A
/// position that the map cannot hold, or that is odd, has its distance over the ellipsoid to a corner of the
/// ground, negative.
Spot spot_of(const Season& season, const GroundMap& map, LonLat place, std::optional<double> position_u_m,
             const Id& ground);

/// The same of a record as it stands: of a kind that has lat, lon, position_u_m and ground (trip, release).
/// Nothing of another kind, nor where lat or lon is blank.
std::optional<Spot> spot_of_row(const Season& season, const GroundMap& map, const Kind& kind, const Row& row);

/// One line for a person: "inside Gannet Patch, 412 m from its edge"; odd ones end in a question.
std::string spot_text(const Spot& spot);

}  // namespace spoilbook
