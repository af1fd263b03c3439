// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "model/folder/complaints.h"
#include "model/place/track_reading.h"
#include "model/unit/checked.h"
#include "model/unit/zone.h"

namespace spoilbook {

/// The fixes of a track's file, by the ending of its name: .gpx, .nmea (see read_gpx, read_nmea) or .csv with
/// the columns time, lat, lon (degrees of WGS 84; others are left alone). `near`: an instant within twelve
/// hours of the first fix, for a receiver's file that has times and no date. Refused with file and line.
Checked<TrackReading> read_track(std::string_view bytes, const std::string& file, const Zone& zone,
                                 std::optional<Instant> near);

/// Looks at a track that comes in: refused where it could never be read as one. Lines at fault are noted, and
/// a file without a single fix.
void check_track(std::string_view bytes, const Zone& zone, const std::string& file, Complaints& complaints);

}  // namespace spoilbook
