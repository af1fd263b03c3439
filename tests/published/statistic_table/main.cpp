// SPDX-License-Identifier: GPL-3.0-or-later
// Answers what water_statistics.py asks on standard input, a line each, numbers apart by blanks:
//   quantile TYPE P x...               the quantile
//   rolling KIND P HALF_LIFE_MIN ALPHA OVER_MS n t x t x...   at each reading of the window (t − over, t]
//   flags LOW HIGH SUSPECT_LOW SUSPECT_HIGH SPIKE SPIKE_FAIL RATE FLAT_MIN FLAT_FAIL_MIN TOLERANCE
//   INTERVAL_MIN
//     n t x t x...   of each reading five digits: range, spike, rate, flat, all; x nan: missing
//   regression PROBABILITY AT n T S T S...   intercept slope standard_error r2 smearing solids low high
#include <fmt/format.h>

#include <iostream>
#include <sstream>

#include "model/turbidity/checks.h"
#include "model/turbidity/rolling_statistic.h"
#include "model/turbidity/sample_quantile.h"
#include "model/turbidity/solids_regression.h"

using namespace spoilbook;

namespace {

template <typename T>
T next(std::istream& in) {
    T value{};
    if (!(in >> value)) throw std::runtime_error("a number is missing");
    return value;
}

void quantile(std::istream& in) {
    const int type = next<int>(in);
    const double p = next<double>(in);
    std::vector<double> numbers;
    for (double x = 0; in >> x;)
        numbers.push_back(x);
    fmt::print("{:.17g}\n", sample_quantile(numbers, p, type));
}

StatisticKind kind_named(const std::string& name) {
    if (name == "mean") return StatisticKind::mean;
    if (name == "median") return StatisticKind::median;
    if (name == "percentile") return StatisticKind::percentile;
    if (name == "ewma") return StatisticKind::ewma;
    throw std::runtime_error("no statistic " + name);
}

void rolling(std::istream& in) {
    StatisticRule rule;
    rule.kind = kind_named(next<std::string>(in));
    rule.p = next<double>(in);
    const double half_life = next<double>(in);
    if (half_life > 0) rule.half_life_min = half_life;
    rule.alpha = next<double>(in);
    const auto over_ms = next<std::int64_t>(in);
    RollingStatistic window(rule);
    for (auto n = next<std::size_t>(in); n > 0; --n) {
        const Instant at{next<std::int64_t>(in)};
        window.add(at, next<double>(in));
        window.drop_until(at - over_ms);
        fmt::print("{:.17g}{}", *window.value(), n > 1 ? ' ' : '\n');
    }
}

void flags(std::istream& in) {
    ThresholdSpan span;
    Thresholds& set = span.thresholds;
    for (auto* part :
         {&set.range_low, &set.range_high, &set.suspect_low, &set.suspect_high, &set.spike, &set.spike_fail,
          &set.rate_per_min, &set.flat_min, &set.flat_fail_min, &set.flat_tolerance})
        *part = next<double>(in);
    const double interval_min = next<double>(in);
    std::vector<LoggerReading> readings(next<std::size_t>(in));
    for (auto& reading : readings) {
        reading.time = Instant{next<std::int64_t>(in)};
        const auto value = next<std::string>(in);
        if (value != "nan") reading.value = std::stod(value);
    }
    const auto verdicts = check_readings(readings, {span}, interval_min);
    for (std::size_t i = 0; i < verdicts.size(); ++i) {
        const auto& said = verdicts[i];
        int digits = 0;
        for (const Flag flag : {said.range, said.spike, said.rate, said.flat, overall(said)})
            digits = digits * 10 + static_cast<int>(flag);
        fmt::print("{}{}", digits, i + 1 < verdicts.size() ? ' ' : '\n');
    }
}

void regression(std::istream& in) {
    const double probability = next<double>(in);
    const double at = next<double>(in);
    std::vector<SolidsPair> pairs(next<std::size_t>(in));
    for (auto& pair : pairs) {
        pair.turbidity = next<double>(in);
        pair.solids_mg_l = next<double>(in);
    }
    const auto found = solids_regression(pairs);
    if (!found) throw std::runtime_error("refused");
    const auto solids = solids_at(*found, at, probability);
    fmt::print("{:.17g} {:.17g} {:.17g} {:.17g} {:.17g} {:.17g} {:.17g} {:.17g}\n", found->intercept,
               found->slope, found->standard_error, found->r2, found->smearing, solids.solids_mg_l,
               solids.low, solids.high);
}

}  // namespace

int main() {
    for (std::string line; std::getline(std::cin, line);) {
        std::istringstream in(line);
        const auto what = next<std::string>(in);
        if (what == "quantile")
            quantile(in);
        else if (what == "rolling")
            rolling(in);
        else if (what == "flags")
            flags(in);
        else
            regression(in);
    }
}
