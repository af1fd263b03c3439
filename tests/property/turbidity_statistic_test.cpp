// SPDX-License-Identifier: GPL-3.0-or-later
// The moving window against a slow and plain reckoning of each window by itself.
#include <rapidcheck.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "model/turbidity/statistic_cursor.h"

using namespace spoilbook;

namespace {

SiteSeries any_series() {
    const auto steps = *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 5));
    std::vector<LoggerReading> readings;
    Instant at{0};
    for (const int step : steps) {
        at = at + step * ms_per_minute;
        const int value = *rc::gen::inRange(-3, 40);
        readings.push_back({at, value < 0 ? std::nullopt : std::optional(value / 2.0)});
    }
    return checked_series(readings, {}, {}, 1);
}

std::vector<LoggerReading> window(const SiteSeries& series, Instant t, std::int64_t over_ms) {
    std::vector<LoggerReading> held;
    for (const auto& reading : series.readings) {
        if (reading.value && t - over_ms < reading.time && reading.time <= t) held.push_back(reading);
    }
    return held;
}

double plain(const StatisticRule& rule, const std::vector<LoggerReading>& held) {
    std::vector<double> values;
    for (const auto& reading : held)
        values.push_back(*reading.value);
    double sum = 0, weights = 0;
    switch (rule.kind) {
        case StatisticKind::mean:
            for (const double value : values)
                sum += value;
            return sum / static_cast<double>(values.size());
        case StatisticKind::ewma:
            for (std::size_t i = 0; i < values.size(); ++i) {
                const double age = static_cast<double>(held.back().time - held[i].time) / 60000;
                const double w = rule.half_life_min
                                     ? std::pow(0.5, age / *rule.half_life_min)
                                     : std::pow(1 - rule.alpha, static_cast<double>(values.size() - 1 - i));
                sum += w * values[i];
                weights += w;
            }
            return sum / weights;
        case StatisticKind::instant:
            return values.back();
        default:
            break;
    }
    std::sort(values.begin(), values.end());
    const std::size_t n = values.size();
    if (rule.kind == StatisticKind::median)
        return n % 2 == 1 ? values[n / 2] : (values[n / 2 - 1] + values[n / 2]) / 2;
    const double at = static_cast<double>(n - 1) * rule.p / 100;  // type 7
    const auto low = static_cast<std::size_t>(at);
    const double share = at - std::floor(at);
    return share < 1e-12 ? values[low] : values[low] * (1 - share) + values[low + 1] * share;
}

}  // namespace

TEST_CASE("each statistic at each reading is that of its own window, worked out by itself") {
    rc::check([] {
        const auto series = any_series();
        StatisticRule rule;
        rule.kind = static_cast<StatisticKind>(*rc::gen::inRange(0, 5));
        rule.p = *rc::gen::inRange(0, 101);
        rule.alpha = *rc::gen::inRange(1, 10) / 10.0;
        if (*rc::gen::arbitrary<bool>()) rule.half_life_min = *rc::gen::inRange(1, 30);
        const int over_min = *rc::gen::inRange(1, 40);
        StatisticCursor cursor(series, rule, over_min);
        for (const auto& reading : series.readings) {
            const auto held = window(series, reading.time, over_min * ms_per_minute);
            const auto found = cursor.at(reading.time);
            RC_ASSERT(found.value.has_value() == !held.empty());
            RC_ASSERT(std::fabs(found.complete * over_min - static_cast<double>(held.size())) < 1e-9);
            if (found.value) RC_ASSERT(std::fabs(*found.value - plain(rule, held)) < 1e-9);
        }
    });
}

TEST_CASE("a window of thousands keeps its order statistics through blocks that split and vanish") {
    rc::check([] {
        SortedWindow window;
        std::vector<double> plain;
        const int n = *rc::gen::inRange(600, 3000);
        const unsigned seed = static_cast<unsigned>(*rc::gen::inRange(1, 1 << 20));
        unsigned state = seed;
        const auto next = [&] { return state = state * 1664525U + 1013904223U, (state >> 8U) % 1000U; };
        for (int i = 0; i < n; ++i) {
            plain.push_back(next());
            window.insert(plain.back());
        }
        while (plain.size() > 3) {
            std::vector<double> sorted = plain;
            std::sort(sorted.begin(), sorted.end());
            const std::size_t k = next() % sorted.size();
            RC_ASSERT(window.size() == sorted.size());
            RC_ASSERT(window.at(k) == sorted[k]);
            const std::size_t leaving = 1 + sorted.size() / 5;
            for (std::size_t i = 0; i < leaving; ++i) {
                window.erase(plain.front());
                plain.erase(plain.begin());
            }
        }
    });
}
