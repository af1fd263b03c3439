// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/record/define.h"

namespace spoilbook {

struct Shift {
    Id id;
    std::string shift;
    std::optional<Instant> start, end;
    Id dredger, tug;
    std::string skipper, crew, weather;
    std::optional<double> wave_height_m;
    std::string signed_by;
    std::optional<Instant> signed_at;
};

struct Crew {
    Id id;
    std::string crew;
    Id shift;
    std::string name, role;
    std::optional<Instant> on, off;
};

struct Station {
    Id id;
    std::string station;
    Id shift, claim;
    std::optional<double> easting_m, northing_m, heading_deg;
    std::optional<Instant> spuds_down, spuds_up;
};

struct Handover {
    Id id;
    std::string handover;
    Id shift, to_shift, station, barge;
    std::optional<double> buckets_in;
    std::string holds, next_move, defects, said_by, taken_by;
};

struct Delay {
    Id id;
    std::string delay;
    Id shift;
    std::optional<Instant> start, end;
    std::string cause, remarks;
};

struct Sounding {
    Id id;
    std::string sounding;
    Id station;
    std::optional<Instant> time;
    std::optional<double> easting_m, northing_m, level_m, depth_m, tide_m;
    std::string by;
    std::optional<double> u_m;
};

/// The causes of delay offered on the barge desk (common practice, no source).
const std::vector<std::string>& delay_causes();

template <>
const Definition<Shift>& definition<Shift>();
template <>
const Definition<Crew>& definition<Crew>();
template <>
const Definition<Station>& definition<Station>();
template <>
const Definition<Handover>& definition<Handover>();
template <>
const Definition<Delay>& definition<Delay>();
template <>
const Definition<Sounding>& definition<Sounding>();

}  // namespace spoilbook
