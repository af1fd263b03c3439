// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "model/record/plant.h"
#include "model/unit/refusal.h"

namespace spoilbook {

/// What a check of a barge's tables found: refusals for a table that cannot be read, notes for an odd one.
struct TableFindings {
    Refusals refusals;
    Notes notes;
};

/// Ullage table [m, m³]. Refused (ullage-table): fewer than two rows, a row that is not two numbers, rows not
/// in one order, an ullage twice, a volume that grows or stays as the ullage grows, a negative number. Noted:
/// an ullage over 15 m (typed in cm?), a greatest volume that differs from the capacity by over 20 %.
TableFindings check_ullage_table(const Barge& barge, const std::string& where);

/// Hydrostatic table [m, t, then TPC t/cm, LCF m (+ forward), MCTC t·m/cm]. Refused (hydrostatic-table):
/// fewer than two rows, rows not of one length (2 to 5), rows not in one order, a draught twice, a
/// displacement that does not grow with draught, a negative draught or displacement. Noted: a draught over 15
/// m, TPC that differs from the table's own slope by over 20 %, LCF beyond half the length.
TableFindings check_hydrostatic_table(const Barge& barge, const std::string& where);

}  // namespace spoilbook
