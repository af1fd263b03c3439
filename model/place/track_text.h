// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string>

#include "model/place/track_reading.h"
#include "model/unit/zone.h"

namespace spoilbook {

/// The fixes from `from` to `until`, both ends included, as a track's CSV file: time (in the zone), lat, lon
/// (seven decimals: a centimetre). Empty where there are less than two.
std::string track_csv(std::span<const ReceiverFix> fixes, Instant from, Instant until, const Zone& zone);

}  // namespace spoilbook
