// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/reconcile_period.h"

#include <cmath>

#include "model/volume/agreement.h"

namespace spoilbook {

namespace {

std::optional<Measured> closing(const ClaimPeriod& period, const Measured& bed) {
    double hopper = 0;
    for (const auto& part : period.bulked)
        hopper += part.hopper_m3.value;
    const double situ = bed.value - period.weighed_m3.value;
    if (!(hopper > 0) || !(situ > 0)) return std::nullopt;
    const double factor = hopper / situ;
    // bed − weighed − Σ V_h / B = 0 at B: u(B) = u(left side) / |its slope|, the slope being V_h / B².
    Estimate barges = period.weighed_m3;
    for (const auto& part : period.bulked)
        barges = barges + part.hopper_m3 * (1 / factor);
    return Measured{factor, std::hypot(bed.u, barges.u()) * factor / situ};
}

}  // namespace

PeriodBalance balance(const ClaimPeriod& period) {
    PeriodBalance found;
    found.bed = {period.removed.value + period.infill.value + period.outside.value,
                 std::hypot(period.removed.u, period.infill.u, period.outside.u)};
    found.difference = {period.barges_m3.value - found.bed.value,
                        std::hypot(period.barges_m3.u(), found.bed.u)};
    found.e_n = e_n(period.barges_m3, Estimate{found.bed.value, found.bed.u, {}});
    found.closing_factor = closing(period, found.bed);
    return found;
}

}  // namespace spoilbook
