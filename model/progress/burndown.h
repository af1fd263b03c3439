// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/ledger.h"

namespace spoilbook {

/// What is still to be carried at the end of one local day, in-situ m³.
struct BurnDay {
    Day date;
    std::optional<double> remaining_m3;  ///< nothing after the as-at
    std::optional<double> plan_m3;       ///< nothing where no claim has a planned volume with its days
};

struct BurnDown {
    double planned_m3 = 0;    ///< Σ planned_in_situ_m3 of the claims
    double dredged_m3 = 0;    ///< Σ in-situ volume of loads whose loading ended by the as-at
    double dredged_u_m3 = 0;  ///< its standard uncertainty
    std::size_t unknown = 0;  ///< loads that no method can value: not zero
    std::vector<BurnDay> days;
};

/// Plan and done, day by day, from the first planned or dredged day to the as-at or the last planned day.
/// What is done is what was dredged (loading end), less what had lain in the hopper before. The plan of a
/// claim falls evenly from the morning of its planned start to the evening of its planned finish. Common
/// practice, no source. Surveys do not enter yet.
BurnDown burndown(const Ledger& ledger, Instant as_at);

}  // namespace spoilbook
