// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <limits>
#include <optional>
#include <vector>

#include "model/record/logger_reading.h"
#include "model/turbidity/flag.h"

namespace spoilbook {

/// Thresholds of the checks of one site, in the unit of its readings; a test without one is not evaluated.
struct Thresholds {
    std::optional<double> range_low, range_high;      ///< outside, the bounds being sound: fail
    std::optional<double> suspect_low, suspect_high;  ///< outside, but inside the range: suspect
    std::optional<double> spike, spike_fail;          ///< above: suspect, fail
    std::optional<double> rate_per_min;               ///< above: suspect
    std::optional<double> flat_min, flat_fail_min;    ///< unchanged for so long: suspect, fail
    std::optional<double> flat_tolerance;  ///< readings closer than this are unchanged; none: equal ones

    [[nodiscard]] bool any() const {
        return range_low || range_high || suspect_low || suspect_high || spike || spike_fail ||
               rate_per_min || flat_min || flat_fail_min;
    }
    bool operator==(const Thresholds&) const = default;
};

/// Thresholds that hold in [from, to).
struct ThresholdSpan {
    Instant from{std::numeric_limits<std::int64_t>::min()};
    Instant to{std::numeric_limits<std::int64_t>::max()};
    Thresholds thresholds;
};

/// The verdict of every test on every reading, under the thresholds in force at the reading's time: of spans
/// that overlap the last in the list; outside all of them nothing is evaluated.
/// REQUIRES readings in order of time, interval_min > 0.
/// - gap: a blank value is missing (9).
/// - range: outside [range_low, range_high] fails; outside [suspect_low, suspect_high] is suspect.
/// - spike: |v − mean of the rows before and after| above `spike` is suspect, above `spike_fail` fails; not
///   evaluated for the first and last row and beside a missing value.
/// - rate: |v − the row before| a minute, above rate_per_min, is suspect; nothing before it: pass.
/// - flat: the values up to this one, missing ones left out, lie within the tolerance since at least the
///   whole number of intervals in flat_min (flat_fail_min).
/// Source: QARTOD manual for real-time ocean optics quality control (US IOOS), tests 1, 4, 6, 7, 8; the first
/// row's and the intervals' rule as the test vectors of ioos_qc have it.
std::vector<Verdicts> check_readings(const std::vector<LoggerReading>& readings,
                                     const std::vector<ThresholdSpan>& spans, double interval_min);

/// The step between readings that occurs most often, in minutes (the shorter of two as common); nothing for
/// fewer than two times. Steps of 0 do not count.
std::optional<double> commonest_step_min(const std::vector<LoggerReading>& readings);

}  // namespace spoilbook
