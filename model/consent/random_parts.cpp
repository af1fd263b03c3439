// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/random_parts.h"

#include <cmath>

namespace spoilbook {

double RandomParts::u() const {
    double sum = squares_;
    for (const auto& [load, part] : by_load_)
        sum += part * part;
    return std::sqrt(sum);
}

}  // namespace spoilbook
