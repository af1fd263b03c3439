// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/record/define.h"

namespace spoilbook {

struct Observation {
    Id id;
    std::string observation;
    std::optional<Instant> time;
    std::string place;
    std::optional<double> wind_kn, wave_height_m, period_s;
    std::string visibility, source, by;
};

struct Event {
    Id id;
    std::string event;
    std::string kind;
    std::optional<Instant> from, to;
    std::string condition, place, what;
    std::optional<double> peak;
    std::string cause, told, action, closed_by, files;
};

struct Find {
    Id id;
    std::string find;
    std::optional<Instant> time;
    Id station;
    std::string place, kind, told, landed_to, cleared_by;
};

struct Tide {
    Id id;
    std::optional<Instant> time;
    std::optional<double> level_m;
};

/// A notice to mariners.
struct Notice {
    Id id;
    std::string number;
    std::optional<Instant> from, to;
    std::string text;
};

struct Fuel {
    Id id;
    std::string fuel;
    std::optional<Instant> time;
    std::string plant;
    std::optional<double> litres;
    std::string docket;
};

template <>
const Definition<Observation>& definition<Observation>();
template <>
const Definition<Event>& definition<Event>();
template <>
const Definition<Find>& definition<Find>();
template <>
const Definition<Tide>& definition<Tide>();
template <>
const Definition<Notice>& definition<Notice>();
template <>
const Definition<Fuel>& definition<Fuel>();

}  // namespace spoilbook
