// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/round_step.h"

#include <cmath>

namespace spoilbook::form {

double round_step(double span, int about) {
    const double rough = span / about;
    const double power = std::pow(10, std::floor(std::log10(rough)));
    const double part = rough / power;
    return (part < 1.5 ? 1 : part < 3.5 ? 2 : part < 7.5 ? 5 : 10) * power;
}

}  // namespace spoilbook::form
