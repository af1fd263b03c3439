// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "model/turbidity/sorted_window.h"

namespace spoilbook {

/// Where a sample quantile lies between order statistics: x[low] + share · (x[high] − x[low]), from 0.
struct QuantilePlace {
    std::size_t low = 0, high = 0;
    double share = 0;
};

/// The place of the p-quantile, 0 ≤ p ≤ 1, of n ≥ 1 numbers under definition `type` 1 to 9.
/// Source: Hyndman and Fan, Sample quantiles in statistical packages, Am. Stat. 50 (1996) 361–365; a position
/// within 4 ε of a whole number is that number, as R's quantile has it.
QuantilePlace quantile_place(std::size_t n, double p, int type);

/// The p-quantile of the numbers in the window. REQUIRES that it is not empty.
double sample_quantile(const SortedWindow& window, double p, int type);
/// The same of numbers in any order.
double sample_quantile(std::vector<double> numbers, double p, int type);

}  // namespace spoilbook
