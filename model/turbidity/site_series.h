// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "model/turbidity/checks.h"

namespace spoilbook {

/// A person's flag on the readings of one site in [from, to]; the checks' own verdicts stay beside it.
struct FlagOverrule {
    Instant from, to;
    Flag flag = Flag::pass;
};

/// One site's readings as three things that never overwrite each other: raw (readings), checked (verdicts)
/// and reported (flags: the overall verdict, or what a person put in its place).
struct SiteSeries {
    std::vector<LoggerReading> readings;  ///< in order of time
    std::vector<Verdicts> verdicts;       ///< one a reading
    std::vector<Flag> flags;              ///< one a reading
    double interval_min = 0;              ///< nominal, else the commonest step; 0: not known
};

/// Checks readings (in any order, put into order of time; as they came where times are equal). `interval_min`
/// blank: the commonest step. Of overrules that meet the last one holds; a missing value stays missing.
SiteSeries checked_series(std::vector<LoggerReading> readings, const std::vector<ThresholdSpan>& spans,
                          const std::vector<FlagOverrule>& overrules, std::optional<double> interval_min);

/// Puts a person's flags in place of what `flags` holds.
void overrule(SiteSeries& series, const std::vector<FlagOverrule>& overrules);

}  // namespace spoilbook
