// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>

#include "model/unit/instant.h"

namespace spoilbook {

/// A span given in minutes, as conditions and thresholds give it, in the nearest whole milliseconds.
inline std::int64_t ms_of_minutes(double minutes) {
    return std::llround(minutes * static_cast<double>(ms_per_minute));
}

}  // namespace spoilbook
