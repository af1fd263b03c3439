// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/record/define.h"

namespace spoilbook {

/// What one barge holds, from empty to full. Draughts are in the order FP FS MP MS AP AS.
struct Load {
    Id id;
    std::string load;
    Id barge, material;
    std::optional<Instant> loading_start, loading_end;
    std::vector<double> dips_m, light_draughts_m, full_draughts_m;
    std::optional<double> dock_density_t_m3, stated_hopper_m3, stated_in_situ_m3;
    std::optional<double> left_before_m3;
    std::vector<double> top_dips_m;
    std::optional<double> water_on_top_m;
    std::string overflow, stated_how;
    std::optional<double> light_density_t_m3;
    std::string rejected, ground_note;
};

/// Buckets counted at a station into a load.
struct Tally {
    Id id;
    std::string tally;
    Id load, station, bucket;
    std::optional<double> count;
    Id shift, material;
    std::string counted;
    std::optional<double> part_buckets;
};

/// Draughts of the empty barge, and what else was in her.
struct LightReading {
    Id id;
    std::string light_reading;
    Id barge;
    std::optional<Instant> time;
    std::vector<double> draughts_m;
    std::optional<double> density_t_m3, hopper_water_m3, fuel_t, ballast_t;
    std::string by;
};

template <>
const Definition<Load>& definition<Load>();
template <>
const Definition<Tally>& definition<Tally>();
template <>
const Definition<LightReading>& definition<LightReading>();

}  // namespace spoilbook
