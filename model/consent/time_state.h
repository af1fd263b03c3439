// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/consent/tide_levels.h"
#include "model/consent/time_rule.h"
#include "model/place/point.h"

namespace spoilbook {

/// What a condition of kind time is judged by beside the clock.
struct TimeSite {
    const Zone& zone;
    std::optional<LonLat> site;  ///< where the sun is looked at; nothing: not known
    const TideLevels& tide;
};

/// Whether the rule holds an activity at the instant itself; nothing where that cannot be told. What is not
/// known matters only where what is known leaves it open.
std::optional<bool> hold_state(const TimeRule& rule, const TimeSite& by, Instant at);

/// The first instant after `at` at which it no longer holds. Nothing where none comes within two years, and
/// where it cannot be told any more before one comes.
std::optional<Instant> hold_ends(const TimeRule& rule, const TimeSite& by, Instant at);

/// The instants at which hold_state may change. The turns of the newest day are kept: releases that follow
/// each other ask for the same day again and again. The rule must outlive it.
class HoldTurns {
 public:
    HoldTurns(const TimeRule& rule, const TimeSite& by) : rule_(rule), by_(by) {}

    [[nodiscard]] const TimeSite& by() const { return by_; }
    /// Those in (from, to), in order.
    [[nodiscard]] std::vector<Instant> between(Instant from, Instant to);

 private:
    const TimeRule& rule_;
    TimeSite by_;
    std::optional<Day> day_;
    std::vector<Instant> of_day_;
};

/// In words, what is missing for an answer at that instant; empty where nothing is.
std::string what_is_missing(const TimeRule& rule, const TimeSite& by, Instant at);

}  // namespace spoilbook
