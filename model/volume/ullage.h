// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "model/volume/readings.h"

namespace spoilbook {

/// How much by dips: the mean of the dips to the spoil through the barge's ullage table gives V_h, m³; the
/// rest by bulking. Nothing where there are no dips; nothing and one line in `left_out` where the barge has
/// no ullage table or the mean dip is outside it (never extrapolated). u: see mean_dip, times the table's
/// slope. Source: ERDC TN-DOER-T6 (2004), p. 5: 6 to 8 soundings, averaged, then the ullage table.
std::optional<MethodResult> by_ullage(const LoadReadings& readings, std::vector<LeftOut>& left_out);

}  // namespace spoilbook
