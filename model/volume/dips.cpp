// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/dips.h"

#include <cmath>

namespace spoilbook {

std::optional<MeanDip> mean_dip(const std::vector<double>& dips_m, double ullage_u_m, RandomInput scatter) {
    if (dips_m.empty()) return std::nullopt;
    const auto n = static_cast<double>(dips_m.size());
    double sum = 0;
    for (const double dip : dips_m)
        sum += dip;
    const double mean = sum / n;
    MeanDip found{Uncertain::random(mean, ullage_u_m, RandomInput::ullage_reading), dips_m.size(), {}};
    if (dips_m.size() < 2) return found;
    double squares = 0;
    for (const double dip : dips_m)
        squares += (dip - mean) * (dip - mean);
    found.scatter_m = std::sqrt(squares / (n - 1));
    found.depth_m = found.depth_m + Uncertain::random(0, *found.scatter_m / std::sqrt(n), scatter);
    return found;
}

std::optional<Uncertain> hopper_at(const LinearTable& ullage_table, const Uncertain& depth_m) {
    const auto point = ullage_table.at(depth_m.value());
    if (!point) return std::nullopt;
    return depth_m.through(point->y, point->slope);
}

}  // namespace spoilbook
