// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/density.h"

#include <cmath>

namespace spoilbook {

std::optional<double> seawater_density_t_m3(double salinity, double t68_c) {
    if (!(salinity >= 0 && salinity <= 42 && t68_c >= -2 && t68_c <= 40)) return std::nullopt;
    const double s = salinity;
    const double t = t68_c;
    // Coefficients as printed in equations 13 and 14 of the paper; kg/m³.
    const double pure =
        999.842594 +
        t * (6.793952e-2 + t * (-9.095290e-3 + t * (1.001685e-4 + t * (-1.120083e-6 + t * 6.536332e-9))));
    const double b = 8.24493e-1 + t * (-4.0899e-3 + t * (7.6438e-5 + t * (-8.2467e-7 + t * 5.3875e-9)));
    const double c = -5.72466e-3 + t * (1.0227e-4 + t * -1.6546e-6);
    return (pure + s * (b + c * std::sqrt(s) + 4.8314e-4 * s)) / 1000;
}

}  // namespace spoilbook
