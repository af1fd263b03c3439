// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "model/unit/estimate.h"
#include "model/unit/id.h"
#include "model/unit/instant.h"
#include "model/unit/zone.h"

namespace spoilbook {

/// One thing that counts under a limit: a release (or the part of it from one claim), a load dredged, or an
/// opening amount; with the amount in the limit's measure.
struct Count {
    Instant at;
    Estimate amount;         ///< 0 where unknown, and for trips and days
    bool unknown = false;    ///< no method can value it: not zero
    int member = -1;         ///< place in the limit's members; -1: none
    std::uint32_t load = 0;  ///< number of the load, for counting the unknown ones
    std::uint32_t key = 0;   ///< number of the trip, or of the local day: each counts once in a window
    bool opening = false;
    bool doubtful = false;  ///< it counts only if what is not recorded of it turns out to be in the scope
    Id ground;              ///< of one whose cell is not recorded: it is one of this ground's; nil: of any
    bool member_unsaid = false;  ///< it has no member because that is not recorded, not because it has none
};

/// How counts make a used figure.
enum class Adding {
    amounts,   ///< the sum of their amounts
    distinct,  ///< how many different keys (trips, days); an opening's amount is added
};

/// What one window holds.
struct Used {
    Estimate used;
    std::vector<std::uint32_t> unknown_loads;  ///< each once
};

}  // namespace spoilbook
