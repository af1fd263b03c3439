// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/random_parts.h"

#include <algorithm>
#include <cmath>

namespace spoilbook {

double RandomParts::u() const {
    auto parts = of_loads_;
    std::stable_sort(parts.begin(), parts.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    double squares = squares_;
    for (auto next = parts.begin(); next != parts.end();) {
        double of_load = 0;
        for (const auto load = next->first; next != parts.end() && next->first == load; ++next)
            of_load += next->second;
        squares += of_load * of_load;
    }
    return std::sqrt(squares);
}

}  // namespace spoilbook
