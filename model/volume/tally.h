// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "model/volume/readings.h"

namespace spoilbook {

/// How much by buckets: V_h = left_before_m3 + Σ (count + part buckets) · C · f, m³; the rest by bulking. C
/// is the bucket's rated capacity, heaped (ISO 7451), f the fill factor of the line's material and bucket.
/// Nothing where the load has no tally lines; nothing and one line in `left_out` where a line lacks its
/// count, capacity or fill factor, or no bucket was counted. Counts and capacities are taken as exact: u is
/// that of f (and B), shared by all loads. Source: common practice, no source; fill factors as in earthmoving
/// handbooks.
std::optional<MethodResult> by_tally(const LoadReadings& readings, std::vector<LeftOut>& left_out);

}  // namespace spoilbook
