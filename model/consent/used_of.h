// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/quantity.h"

namespace spoilbook {

/// What a window's sums are in the terms of a limit.
struct UsedOf {
    double used = 0;  ///< in the measure's unit, a year's where the window is a mean; a fraction for a share
    double of_total = 0;  ///< for a share: what it is a share of, likewise; else 0
    bool judged = true;   ///< false while a share's total so far is below its floor
};

/// The years that a window's sum is divided by: those of a mean, else 1.
double years_of(const Quantity& quantity);

/// Limits, first overs and the release check all take it from here. `sum` and `total`: what the window holds
/// of the one member, and of all (needed for a share of the total so far alone), not divided. A share of
/// nothing is 0.
UsedOf used_of(const Quantity& quantity, double sum, double total, double years);
inline UsedOf used_of(const Quantity& quantity, double sum, double total) {
    return used_of(quantity, sum, total, years_of(quantity));
}

}  // namespace spoilbook
