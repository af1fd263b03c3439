// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

namespace spoilbook {

/// Whether a position lies in a ground, as surely as the position is known.
enum class PlaceVerdict { inside, outside, cannot_tell };

/// Inside at 2 u or more, outside at -2 u or less, else it cannot be told. `signed_distance_m` positive
/// inside (take an inset off it first); `position_u_m` the position's standard uncertainty (68 %), 0 or
/// more. NaN in either, or a negative u: it cannot be told. Common practice, no source.
PlaceVerdict verdict(double signed_distance_m, double position_u_m);

/// "inside", "outside", "cannot_tell": the words of files and JSON.
std::string_view text(PlaceVerdict verdict);

}  // namespace spoilbook
