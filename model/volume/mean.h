// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <numeric>
#include <vector>

namespace spoilbook {

/// Plain mean of what was read; the caller has at least one number.
inline double mean_of(const std::vector<double>& numbers) {
    return std::accumulate(numbers.begin(), numbers.end(), 0.0) / static_cast<double>(numbers.size());
}

}  // namespace spoilbook
