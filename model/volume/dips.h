// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "model/volume/table.h"
#include "model/volume/uncertain.h"

namespace spoilbook {

/// The mean of n dips, m from the coaming down.
struct MeanDip {
    Uncertain depth_m;
    std::size_t count = 0;
    std::optional<double> scatter_m;  ///< sample standard deviation; blank for one dip
};

/// u² = s²/n + ullage_u_m². `ullage_u_m` is what list, trim and coaming do to the whole reading: it does not
/// shrink with the number of dips (GUM 4.2 for the scatter, 4.3 for the rest). Nothing where there are no
/// dips.
std::optional<MeanDip> mean_dip(const std::vector<double>& dips_m, double ullage_u_m, RandomInput scatter);

/// Hopper volume m³ down to an ullage; nothing outside the table. u by the slope of the table there.
std::optional<Uncertain> hopper_at(const LinearTable& ullage_table, const Uncertain& depth_m);

}  // namespace spoilbook
