// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

#include "model/place/track_reading.h"
#include "model/unit/checked.h"

namespace spoilbook {

/// Reads the track points (trkpt) of GPX 1.0 or 1.1, all tracks and segments together; routes and waypoints
/// are plans and marks, not where she went, and are passed over. Times are UTC where they give no zone (the
/// schema says so), which is a fault that is told; fractions are cut to milliseconds. A point without a time,
/// or whose place or time does not read, is left out with its line. Refused (code "track"): XML that is not
/// well formed, another root than gpx, a document type or entity of its own (nothing is ever expanded or
/// fetched), elements nested over 64 deep, a tag or text of over 1 MiB; code "no-fix": no
/// point with a time.
Checked<TrackReading> read_gpx(std::string_view bytes);

}  // namespace spoilbook
