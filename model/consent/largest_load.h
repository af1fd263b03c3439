// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "model/consent/what_if.h"

namespace spoilbook {

/// The largest load that still fits every limit: of a barge being loaded, or waiting full.
struct LargestLoad {
    double hopper_m3 = 0;                  ///< all that may be in her, best estimate; at most her capacity
    std::optional<double> in_situ_m3;      ///< the same in situ; nothing where a factor is missing
    std::optional<double> buckets;         ///< in all, in the mix tallied so far; nothing before the first
    std::optional<double> ullage_m;        ///< mean dip to stop at; nothing without an ullage table
    const Condition* bound_by = nullptr;   ///< null: her capacity, no limit
    std::vector<const Condition*> untold;  ///< limits that cannot be worked out: an amount is unknown
};

/// Counted before it: everything before the planned instant and loads under way or waiting full
/// (consent-rules, trap 7). The load keeps the make-up that its tally has so far, else its material. Where no
/// cell is chosen, that of the cell with most room. The stricter of the factors as reported and as restated.
/// Points into the season of `done`, what was done so far. Nothing for an unknown load, and where the barge
/// has neither capacity nor table.
std::optional<LargestLoad> largest_load(const Ledger& done, const PlannedRelease& planned);

}  // namespace spoilbook
