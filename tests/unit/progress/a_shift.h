// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/record/season.h"

namespace spoilbook::tests {

/// 2025-11-04T05:40+13:00 and some minutes: an invented shift of Heron in claim FB1.
constexpr Instant shift_minute(std::int64_t minutes) {
    return Instant{1762188000000} + minutes * ms_per_minute;
}

inline Id id_of(unsigned char n) {
    Id id;
    id.bytes[15] = n;
    return id;
}

inline Station a_station(unsigned char n, double easting, double northing, double heading,
                         std::int64_t down) {
    Station station;
    station.id = id_of(n);
    station.station = "ST-" + std::to_string(n);
    station.shift = id_of(1);
    station.claim = id_of(50);
    station.easting_m = easting;
    station.northing_m = northing;
    station.heading_deg = heading;
    station.spuds_down = shift_minute(down);
    return station;
}

inline Shift a_shift(unsigned char n, std::int64_t start, std::optional<std::int64_t> end) {
    Shift shift;
    shift.id = id_of(n);
    shift.shift = "S-" + std::to_string(n);
    shift.start = shift_minute(start);
    if (end) shift.end = shift_minute(*end);
    return shift;
}

inline Load a_load(unsigned char n, std::int64_t start, std::optional<std::int64_t> end) {
    Load load;
    load.id = id_of(n);
    load.load = "L-" + std::to_string(n);
    load.loading_start = shift_minute(start);
    if (end) load.loading_end = shift_minute(*end);
    return load;
}

inline Trip a_trip(unsigned char n, unsigned char load, std::int64_t off, std::optional<std::int64_t> back) {
    Trip trip;
    trip.id = id_of(n);
    trip.trip = "T-" + std::to_string(n);
    trip.load = id_of(load);
    trip.departed = shift_minute(off);
    if (back) trip.returned = shift_minute(*back);
    return trip;
}

inline Delay a_delay(unsigned char n, std::int64_t start, std::optional<std::int64_t> end) {
    Delay delay;
    delay.id = id_of(n);
    delay.delay = "D-" + std::to_string(n);
    delay.shift = id_of(1);
    delay.start = shift_minute(start);
    if (end) delay.end = shift_minute(*end);
    delay.cause = "shipping movement";
    return delay;
}

}  // namespace spoilbook::tests
