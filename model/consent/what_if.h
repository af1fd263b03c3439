// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/ledger.h"
#include "model/unit/checked.h"

namespace spoilbook {

/// A release that has not happened: the load about to go, and where and when its doors would open.
struct PlannedRelease {
    Id load;
    Instant at;                      ///< doors open, and the release's end
    std::optional<double> lat, lon;  ///< WGS 84; only as given, never one that was logged
    double position_u_m = 0;         ///< standard uncertainty
    Id ground, cell;                 ///< cell: its point farthest from any edge stands for a position
    std::optional<double> wave_height_m;
};

/// The trips that such a release puts in place of those of their loads.
struct WhatIf {
    std::vector<Trip> trips;
    std::unordered_map<Id, double> rest_of;  ///< of which loads only a share, since a part has gone
};

/// Its own trip first, then one of every other load that is under way or waiting full, since it counts before
/// this one; of a load of which a part was released and that is under way again or still, what is left of it.
WhatIf trips_with(const Ledger& done, const PlannedRelease& planned);

/// What was done with such a release; of the planned load with these figures where they are given.
Ledger ledger_with(const Ledger& done, const PlannedRelease& planned,
                   std::optional<LoadFigures> figures = std::nullopt);

/// The plan with the ground that its cell or its position lies in, where none was named; of a book with one
/// ground, that one.
PlannedRelease completed(const Ledger& done, PlannedRelease planned);

/// The season of a ledger with such trips as it was done by the planned instant: nothing loaded or released
/// after it, but for the load.
Season done_by(const Ledger& would_be, const PlannedRelease& planned);

}  // namespace spoilbook
