// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <vector>

#include "model/unit/checked.h"
#include "model/unit/zone.h"

namespace spoilbook {

/// When something is forbidden, or alone allowed: a condition of kind time. All members given must fit.
struct TimeRule {
    struct DateSpan {
        int from = 0, to = 0;
    };  ///< month · 100 + day, both days whole; to < from wraps the year
    struct HourSpan {
        int from = 0, to = 0;
    };  ///< minutes of the local wall clock, [from, to); to ≤ from wraps midnight
    bool forbids = true;
    std::vector<DateSpan> dates;
    std::vector<HourSpan> hours;
    std::vector<int> weekdays;   ///< 1 Monday … 7 Sunday
    bool needs_more = false;     ///< by daylight, tide or something else: the clock alone does not tell
    std::optional<bool> by_day;  ///< true: between sunrise and sunset; false: between sunset and sunrise
    std::optional<double> tide_min_m, tide_max_m;  ///< level within these, both included
    std::string tied_to;                           ///< what else it hangs on, which nobody can work out
};

Checked<TimeRule> time_rule_from(const nlohmann::json& body);

/// Whether dates, hours and weekdays fit at the instant itself.
bool fits_clock(const TimeRule& rule, const Zone& zone, Instant at);
/// The instants of a local day at which fits_clock may change, in order.
std::vector<Instant> clock_turns(const TimeRule& rule, const Zone& zone, Day day);

/// Whether the rule holds an activity at the instant itself, by the clock alone (see time_state.h for what
/// needs more).
bool holds_at(const TimeRule& rule, const Zone& zone, Instant at);
/// The first instant after `at` at which it no longer does; nothing within two years.
std::optional<Instant> holds_until(const TimeRule& rule, const Zone& zone, Instant at);

}  // namespace spoilbook
