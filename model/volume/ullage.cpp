// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/ullage.h"

#include "model/volume/assumptions.h"
#include "model/volume/solids.h"

namespace spoilbook {

std::optional<MethodResult> by_ullage(const LoadReadings& readings, std::vector<LeftOut>& left_out) {
    if (!readings.dip) return std::nullopt;
    const auto& hopper = readings.hopper_by_dips_m3;
    if (!hopper) {
        const bool table = readings.tables != nullptr && !readings.tables->hopper_m3.empty();
        left_out.push_back({Method::ullage, table ? obstacle::dips_outside : obstacle::no_ullage_table});
        return std::nullopt;
    }
    const MeanDip& dip = *readings.dip;
    MethodResult result;
    result.method = Method::ullage;
    result.facts = {{"dips", static_cast<double>(dip.count)},
                    {"mean_dip_m", dip.depth_m.value()},
                    {"mean_dip_u_m", dip.depth_m.u()},
                    {"slope_m3_per_m", readings.tables->hopper_m3.at(dip.depth_m.value())->slope}};
    if (dip.scatter_m) {
        result.facts.push_back({"dip_scatter_m", *dip.scatter_m});
    } else {
        result.assumed.push_back(assumption::one_dip);
    }
    if (!readings.barge->ullage_u_m) result.assumed.push_back(assumption::ullage_exact);
    HopperContent content;
    content.hopper_m3 = hopper;
    if (readings.split.situ_per_hopper) content.in_situ_m3 = *hopper * *readings.split.situ_per_hopper;
    content.top_m3 = top_volume(readings, hopper);
    if (content.top_m3) result.facts.push_back({"top_m3", content.top_m3->value()});
    give_amounts(readings, content, result);
    return result;
}

}  // namespace spoilbook
