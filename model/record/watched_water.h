// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/record/define.h"

namespace spoilbook {

/// A place where a logger measures turbidity, and the thresholds of its checks.
struct Site {
    Id id;
    std::string site, role;
    std::optional<double> easting_m, northing_m;
    std::string unit;
    std::optional<double> interval_min, range_low, range_high, spike, rate_per_min, flat_min;
};

struct Service {
    Id id;
    std::string service;
    Id site;
    std::optional<Instant> time;
    std::string what, before, after, serial;
};

/// A logger's file, kept as it came.
struct LoggerFile {
    Id id;
    Id site;
    std::string file, digest;
    std::string how;  ///< JSON: how it is read (logger_layout.h); blank: columns time, value
};

struct Survey {
    Id id;
    std::string survey, file, surveyed_on, kind, positive;
    std::optional<double> offset_m, u_m;
    std::string s44_order, digest;
};

template <>
const Definition<Site>& definition<Site>();
template <>
const Definition<Service>& definition<Service>();
template <>
const Definition<LoggerFile>& definition<LoggerFile>();
template <>
const Definition<Survey>& definition<Survey>();

}  // namespace spoilbook
