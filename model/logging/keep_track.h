// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/book.h"
#include "model/record/trip.h"

namespace spoilbook {

/// Keeps the fixes that a receiver told during a trip (a CSV file, as model/place/track_text.h writes it) as
/// the trip's track. Answers whether it did: not where the trip has a track, nor where the file is empty.
/// Refused as Change::keep is.
Checked<bool> keep_track(Change& change, const Trip& trip, const std::string& csv);

}  // namespace spoilbook
