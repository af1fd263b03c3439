// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/record/define.h"

namespace spoilbook {

/// Casting off to alongside again. The columns from release_start on carry the one release of an ordinary
/// trip; where release.csv has rows for the trip, those take over.
struct Trip {
    Id id;
    std::string trip;
    Id load, tug;
    std::optional<Instant> departed, release_start, release_end, returned;
    Id ground, cell;
    std::optional<double> lat, lon, position_u_m, wave_height_m;
    std::string remarks, outcome, tug_master, tow;
    std::optional<double> tow_line_m;
    std::string receiver_on, source, position_from;
};

/// One opening of the hopper.
struct Release {
    Id id;
    std::string release;
    Id trip;
    std::optional<Instant> doors_open, empty, doors_shut;
    Id ground, cell;
    std::optional<double> lat, lon, position_u_m;
    std::string position_from;
    std::optional<double> share;
    std::string emptied;
    std::optional<double> left_m3;
    std::string why;
};

struct Watch {
    Id id;
    std::string watch;
    Id trip;
    std::string observer;
    std::optional<Instant> start, end;
    std::string seen, species;
    std::optional<double> number, distance_m;
    std::string action;
    std::optional<Instant> cleared;
};

/// One trip's fixes, kept as the file that came.
struct Track {
    Id id;
    Id trip;
    std::string file, digest;
};

template <>
const Definition<Trip>& definition<Trip>();
template <>
const Definition<Release>& definition<Release>();
template <>
const Definition<Watch>& definition<Watch>();
template <>
const Definition<Track>& definition<Track>();

}  // namespace spoilbook
