// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/stated.h"

#include "model/volume/assumptions.h"
#include "model/volume/solids.h"

namespace spoilbook {

std::optional<MethodResult> by_statement(const LoadReadings& readings) {
    const Load& load = *readings.load;
    if (!load.stated_hopper_m3 && !load.stated_in_situ_m3) return std::nullopt;
    MethodResult result;
    result.method = Method::stated;
    result.assumed.push_back(assumption::stated_exact);
    const auto& situ_per_hopper = readings.split.situ_per_hopper;
    HopperContent content;
    if (load.stated_hopper_m3) content.hopper_m3 = *load.stated_hopper_m3;
    if (load.stated_in_situ_m3) content.in_situ_m3 = *load.stated_in_situ_m3;
    if (situ_per_hopper) {
        if (!content.hopper_m3) content.hopper_m3 = *content.in_situ_m3 / *situ_per_hopper;
        if (!content.in_situ_m3) content.in_situ_m3 = *content.hopper_m3 * *situ_per_hopper;
    }
    content.top_m3 = top_volume(readings, content.hopper_m3);
    give_amounts(readings, content, result);
    return result;
}

}  // namespace spoilbook
