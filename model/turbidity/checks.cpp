// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/checks.h"

#include <algorithm>
#include <cmath>
#include <unordered_map>

#include "model/turbidity/flat_run.h"

namespace spoilbook {

namespace {

bool outside(double value, const std::optional<double>& low, const std::optional<double>& high) {
    return (low && value < *low) || (high && value > *high);
}

Flag range_verdict(const Thresholds& set, double value) {
    if (!set.range_low && !set.range_high && !set.suspect_low && !set.suspect_high)
        return Flag::not_evaluated;
    if (outside(value, set.range_low, set.range_high)) return Flag::fail;
    return outside(value, set.suspect_low, set.suspect_high) ? Flag::suspect : Flag::pass;
}

Flag spike_verdict(const Thresholds& set, const std::vector<LoggerReading>& readings, std::size_t i) {
    if (!set.spike && !set.spike_fail) return Flag::not_evaluated;
    if (i == 0 || i + 1 == readings.size()) return Flag::not_evaluated;
    const auto& before = readings[i - 1].value;
    const auto& after = readings[i + 1].value;
    if (!before || !after) return Flag::not_evaluated;
    const double height = std::fabs(*readings[i].value - (*before + *after) / 2);
    if (set.spike_fail && height > *set.spike_fail) return Flag::fail;
    return set.spike && height > *set.spike ? Flag::suspect : Flag::pass;
}

Flag rate_verdict(const Thresholds& set, const std::vector<LoggerReading>& readings, std::size_t i) {
    if (!set.rate_per_min) return Flag::not_evaluated;
    if (i == 0 || !readings[i - 1].value) return Flag::pass;
    const double change = std::fabs(*readings[i].value - *readings[i - 1].value);
    const double minutes =
        static_cast<double>(readings[i].time - readings[i - 1].time) / static_cast<double>(ms_per_minute);
    return change > *set.rate_per_min * minutes ? Flag::suspect : Flag::pass;
}

/// Whole intervals of the time set, in milliseconds: what a run must span.
double flat_span_ms(double minutes, double interval_min) {
    // A time of 0.3 over an interval of 0.1 is three of them.
    return std::floor(minutes / interval_min + 1e-9) * interval_min * static_cast<double>(ms_per_minute);
}

Flag flat_verdict(const Thresholds& set, double interval_min, std::int64_t flat_ms) {
    if (!set.flat_min && !set.flat_fail_min) return Flag::not_evaluated;
    // Half a millisecond: instants are whole ones, an interval need not be.
    const double span = static_cast<double>(flat_ms) + 0.5;
    const auto lasts = [&](const std::optional<double>& minutes) {
        return minutes && flat_ms > 0 && span >= flat_span_ms(*minutes, interval_min);
    };
    if (lasts(set.flat_fail_min)) return Flag::fail;
    return lasts(set.flat_min) ? Flag::suspect : Flag::pass;
}

const Thresholds* in_force(const std::vector<ThresholdSpan>& spans, Instant at) {
    const auto found = std::find_if(spans.rbegin(), spans.rend(),
                                    [&](const auto& span) { return span.from <= at && at < span.to; });
    return found == spans.rend() ? nullptr : &found->thresholds;
}

}  // namespace

Flag overall(const Verdicts& verdicts) {
    if (verdicts.gap == Flag::missing) return Flag::missing;
    const auto rank = [](Flag flag) {
        switch (flag) {
            case Flag::missing:
                return 0;
            case Flag::not_evaluated:
                return 1;
            case Flag::pass:
                return 2;
            case Flag::suspect:
                return 3;
            case Flag::fail:
                break;
        }
        return 4;
    };
    return std::max({verdicts.range, verdicts.spike, verdicts.rate, verdicts.flat},
                    [&](Flag a, Flag b) { return rank(a) < rank(b); });
}

std::vector<Verdicts> check_readings(const std::vector<LoggerReading>& readings,
                                     const std::vector<ThresholdSpan>& spans, double interval_min) {
    std::vector<Verdicts> verdicts(readings.size());
    FlatRun run;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const auto& reading = readings[i];
        Verdicts& said = verdicts[i];
        if (!reading.value) {
            said = {Flag::missing, Flag::missing, Flag::missing, Flag::missing, Flag::missing};
            continue;
        }
        said.gap = Flag::pass;
        const Thresholds* set = in_force(spans, reading.time);
        const auto tolerance = set == nullptr ? std::nullopt : set->flat_tolerance;
        const auto flat_ms = run.add(reading.time, *reading.value, tolerance.value_or(0));
        if (set == nullptr) continue;
        said.range = range_verdict(*set, *reading.value);
        said.spike = spike_verdict(*set, readings, i);
        said.rate = rate_verdict(*set, readings, i);
        said.flat = flat_verdict(*set, interval_min, flat_ms);
    }
    return verdicts;
}

std::optional<double> commonest_step_min(const std::vector<LoggerReading>& readings) {
    std::unordered_map<std::int64_t, std::size_t> steps;
    for (std::size_t i = 1; i < readings.size(); ++i) {
        const auto step = readings[i].time - readings[i - 1].time;
        if (step > 0) ++steps[step];
    }
    std::int64_t best = 0;
    std::size_t most = 0;
    for (const auto& [step, n] : steps) {
        if (n > most || (n == most && step < best)) {
            best = step;
            most = n;
        }
    }
    if (most == 0) return std::nullopt;
    return static_cast<double>(best) / static_cast<double>(ms_per_minute);
}

}  // namespace spoilbook
