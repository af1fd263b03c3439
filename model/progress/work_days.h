// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "model/consent/ledger.h"

namespace spoilbook {

/// One local day of the log.
struct WorkDay {
    Day date;
    double in_situ_m3 = 0;  ///< of loads whose loading ended in it
    double filling_h = 0;   ///< with a barge being filled (loading start to end), cut at midnights
};

/// Every local day from the first load to the last day that was over by `as_at`, days without work too.
/// A load that no method can value adds its hours and no volume. Empty where nothing was loaded.
std::vector<WorkDay> work_days(const Ledger& ledger, Instant as_at);

}  // namespace spoilbook
