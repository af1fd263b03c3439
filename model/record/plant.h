// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/record/define.h"

namespace spoilbook {

struct Dredger {
    Id id;
    std::string name;
    std::optional<double> reach_min_m, reach_max_m;
    Table reach_table;  ///< [depth m, reach m]
    std::optional<double> slew_offset_m, swing_deg;
};

/// A bucket belongs to one dredger; its name is unique there.
struct Bucket {
    Id id;
    std::string name;
    Id dredger;
    std::optional<double> capacity_m3;
};

struct Tug {
    Id id;
    std::string name;
};

struct Barge {
    Id id;
    std::string name;
    std::optional<double> capacity_m3;
    Table ullage_table;       ///< [ullage m, hopper m³]
    Table hydrostatic_table;  ///< [draught m, displacement t, then optionally TPC t/cm, LCF m, MCTC t·m/cm]
    std::optional<double> hydrostatic_density_t_m3;
    std::optional<std::int64_t> draught_mean;  ///< 8 or 6
    std::optional<double> ullage_u_m, draught_u_m;
    std::optional<double> lbp_m;
};

template <>
const Definition<Dredger>& definition<Dredger>();
template <>
const Definition<Bucket>& definition<Bucket>();
template <>
const Definition<Tug>& definition<Tug>();
template <>
const Definition<Barge>& definition<Barge>();

}  // namespace spoilbook
