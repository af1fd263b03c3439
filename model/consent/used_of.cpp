// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/used_of.h"

#include <algorithm>

namespace spoilbook {

double years_of(const Quantity& quantity) {
    return quantity.window.kind == WindowKind::mean ? std::max(1, quantity.window.n) : 1;
}

UsedOf used_of(const Quantity& quantity, double sum, double total, double years) {
    UsedOf part;
    part.used = sum / years;
    if (!quantity.share_of_total) return part;
    part.of_total = quantity.of_value.value_or(total / years);
    part.used = part.of_total > 0 ? part.used / part.of_total : 0;
    part.judged = !quantity.of_floor || part.of_total >= *quantity.of_floor;
    return part;
}

}  // namespace spoilbook
