// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/readings.h"

namespace spoilbook {
namespace {

TopSurface read_top(const LoadReadings& readings) {
    const Load& load = *readings.load;
    const double reading_u = readings.barge == nullptr ? 0 : readings.barge->ullage_u_m.value_or(0);
    TopSurface top;
    std::optional<Uncertain> depth;
    if (const auto dip = mean_dip(load.top_dips_m, reading_u, RandomInput::top_dip_scatter)) {
        depth = dip->depth_m;
    } else if (load.water_on_top_m.value_or(0) > 0) {
        if (readings.dip) {
            depth = readings.dip->depth_m - *load.water_on_top_m;
        } else {
            top.depth_alone = true;
        }
    }
    if (!depth) return top;
    if (readings.tables != nullptr) top.volume_m3 = hopper_at(readings.tables->hopper_m3, *depth);
    top.outside_table = !top.volume_m3;
    return top;
}

}  // namespace

LoadReadings read_load(const LoadIndex& index, const Load& load) {
    LoadReadings readings;
    readings.index = &index;
    readings.load = &load;
    readings.barge = index.season().barges.find(load.barge);
    readings.tables = index.tables_of(load.barge);
    readings.split = split_load(index, load);
    const double reading_u = readings.barge == nullptr ? 0 : readings.barge->ullage_u_m.value_or(0);
    readings.dip = mean_dip(load.dips_m, reading_u, RandomInput::dip_scatter);
    if (readings.dip && readings.tables != nullptr) {
        readings.hopper_by_dips_m3 = hopper_at(readings.tables->hopper_m3, readings.dip->depth_m);
    }
    readings.top = read_top(readings);
    return readings;
}

}  // namespace spoilbook
