// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "model/volume/dips.h"
#include "model/volume/method.h"
#include "model/volume/split.h"

namespace spoilbook {

/// The uppermost surface in the hopper where readings say more than the spoil's: V_top.
struct TopSurface {
    std::optional<Uncertain> volume_m3;  ///< blank: nothing read, or outside the table
    bool outside_table = false;
    bool depth_alone = false;  ///< a depth of water without dips to the spoil to count it from
};

/// One load's readings, made ready once for all methods.
struct LoadReadings {
    const LoadIndex* index = nullptr;
    const Load* load = nullptr;
    const Barge* barge = nullptr;         ///< null where the barge is not recorded
    const BargeTables* tables = nullptr;  ///< null with it
    LoadSplit split;
    std::optional<MeanDip> dip;
    std::optional<Uncertain> hopper_by_dips_m3;
    TopSurface top;

    [[nodiscard]] double water_t_m3() const { return index->water_density_t_m3(); }
};

LoadReadings read_load(const LoadIndex& index, const Load& load);

}  // namespace spoilbook
