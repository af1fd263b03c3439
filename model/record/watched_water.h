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

/// Thresholds of a site's checks that hold for a time, in place of those of the site itself.
struct SiteCheck {
    Id id;
    std::string check;
    Id site;
    std::optional<Instant> from, to;
    std::optional<double> range_low, range_high, suspect_low, suspect_high, spike, spike_fail, rate_per_min,
        flat_min, flat_fail_min, flat_tolerance;
};

/// A person's flag on the readings of a site, with the reason; raw values and the checks' verdicts stay.
struct Overrule {
    Id id;
    std::string overrule;
    Id site;
    std::optional<Instant> from, to;  ///< both ends included; to blank: the one reading at from
    std::string flag, why, by;
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
const Definition<SiteCheck>& definition<SiteCheck>();
template <>
const Definition<Overrule>& definition<Overrule>();
template <>
const Definition<Service>& definition<Service>();
template <>
const Definition<LoggerFile>& definition<LoggerFile>();
template <>
const Definition<Survey>& definition<Survey>();

}  // namespace spoilbook
