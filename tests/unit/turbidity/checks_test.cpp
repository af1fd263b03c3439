// SPDX-License-Identifier: GPL-3.0-or-later
// Vectors SEEN in the text of tests/test_qartod.py of ioos_qc at 9c1853a (US IOOS QARTOD tests), and COMP
// there by an independent re-implementation.
#include "model/turbidity/checks.h"

#include <catch2/catch.hpp>
#include <limits>

#include "model/turbidity/site_series.h"

using namespace spoilbook;

namespace {

constexpr double gone = std::numeric_limits<double>::quiet_NaN();

std::vector<LoggerReading> every(std::int64_t step_ms, const std::vector<double>& values) {
    std::vector<LoggerReading> readings;
    for (const double value : values) {
        const Instant at{static_cast<std::int64_t>(readings.size()) * step_ms};
        readings.push_back({at, value == value ? std::optional(value) : std::nullopt});
    }
    return readings;
}

constexpr std::int64_t quarter = 15 * ms_per_minute;

std::vector<int> flags(const std::vector<LoggerReading>& readings, const Thresholds& set,
                       Flag Verdicts::*test) {
    const double step = *commonest_step_min(readings);
    std::vector<int> said;
    for (const auto& verdicts : check_readings(readings, {{.thresholds = set}}, step))
        said.push_back(static_cast<int>(verdicts.*test));
    return said;
}

using V = std::vector<int>;

}  // namespace

TEST_CASE("a reading outside the sensor's range fails, one outside the sound range is suspect") {
    Thresholds set;
    set.range_low = 10;
    set.range_high = 50;
    set.suspect_low = 20;
    set.suspect_high = 40;
    // QC-01, SEEN
    CHECK(flags(every(quarter, {5, 10, 15, 20, 25, 30, 35, 40, 45, 51}), set, &Verdicts::range) ==
          V{4, 3, 3, 1, 1, 1, 1, 1, 3, 4});
}

TEST_CASE("a spike stands out from the mean of its neighbours, and the ends cannot be judged") {
    Thresholds set;
    set.spike = 25;
    set.spike_fail = 50;
    // QC-02 and QC-03, SEEN
    CHECK(flags(every(quarter, {10, 12, 999.99, 13, 15, 40, 9, 9}), set, &Verdicts::spike) ==
          V{2, 4, 4, 4, 1, 3, 1, 2});
    CHECK(flags(every(quarter, {-100, -99, -99, -98}), set, &Verdicts::spike) == V{2, 1, 1, 2});
}

TEST_CASE("small spikes side by side are each held against the mean of their neighbours") {
    Thresholds set;
    set.spike = 0.5;
    set.spike_fail = 1;
    // QC-04, SEEN but for the readings beside the missing one: versions of that library flag them 2 or 9.
    CHECK(flags(every(quarter, {3, 4.99, 5, 6, 8, 6, 6, 6.75, 6, 6, 5.3, 6, 6, 9, 5, gone, 4, 4}), set,
                &Verdicts::spike) == V{2, 3, 1, 1, 4, 3, 1, 3, 1, 1, 3, 1, 4, 4, 2, 9, 2, 2});
}

TEST_CASE("beside a missing value a spike cannot be judged") {
    Thresholds set;
    set.spike = 25;
    // The end of QC-05, SEEN: a missing value flags its neighbours 2. The rest of QC-05 is of a spike against
    // the nearer neighbour, which is not offered (docs/calculations.md, Turbidity).
    CHECK(flags(every(quarter, {5, 5, 5, gone, 5, 5}), set, &Verdicts::spike) == V{2, 1, 2, 9, 2, 2});
}

TEST_CASE("a change faster than the rate is suspect") {
    Thresholds set;
    set.rate_per_min = 5.0 / 15;
    const std::vector<double> values{2, 10, 2.1, 3,  4,  5,  7,  10, 0, 2, 2.2, 2,
                                     1, 2,  3,   90, 91, 92, 93, 1,  2, 3, 4,   5};
    // QC-06, SEEN
    CHECK(flags(every(quarter, values), set, &Verdicts::rate) ==
          V{1, 3, 3, 1, 1, 1, 1, 1, 3, 1, 1, 1, 1, 1, 1, 3, 1, 1, 1, 3, 1, 1, 1, 1});
}

TEST_CASE("a logger that sticks is suspect after one time and fails after a longer one") {
    Thresholds set;
    set.flat_min = 50;
    set.flat_fail_min = 80;
    set.flat_tolerance = 0.01;
    const std::vector<double> values{1, 2, 2.0001, 2, 2.0001, 2, 2.0001, 2, 4, 5, 3, 3.0001, 3.0005, 3.00001};
    // QC-07, SEEN
    CHECK(flags(every(quarter, values), set, &Verdicts::flat) == V{1, 1, 1, 1, 3, 3, 4, 4, 1, 1, 1, 1, 1, 3});
    set.flat_min = 3.0 / 60;
    set.flat_fail_min = 5.0 / 60;
    set.flat_tolerance = 0.1;
    // QC-08, SEEN
    CHECK(flags(every(1000, {5, 5, 5, 5, 5, 5}), set, &Verdicts::flat) == V{1, 1, 1, 3, 3, 4});
}

TEST_CASE("the overall flag is the worst of the tests, and a missing value stays missing") {
    const auto of = [](int range, int spike, int rate) {
        Verdicts said;
        said.range = static_cast<Flag>(range);
        said.spike = static_cast<Flag>(spike);
        said.rate = static_cast<Flag>(rate);
        said.gap = range == 9 && spike == 9 && rate == 9 ? Flag::missing : Flag::pass;
        said.flat = Flag::missing;  // the vectors have three tests: the fourth has nothing to say
        return static_cast<int>(overall(said));
    };
    // QC-09, SEEN: precedence 9 < 2 < 1 < 3 < 4
    const V range{1, 1, 1, 9, 1, 1, 9, 9}, spike{2, 1, 1, 1, 1, 1, 9, 9}, rate{1, 3, 3, 4, 3, 1, 2, 9};
    V said;
    for (std::size_t i = 0; i < range.size(); ++i)
        said.push_back(of(range[i], spike[i], rate[i]));
    CHECK(said == V{1, 3, 3, 4, 3, 1, 2, 9});
}

TEST_CASE("without thresholds every present reading is flag 2 and every blank one flag 9") {
    const auto series = checked_series(every(quarter, {1, gone, 3}), {}, {}, std::nullopt);
    CHECK(series.flags == std::vector{Flag::not_evaluated, Flag::missing, Flag::not_evaluated});
    CHECK(series.interval_min == 15);
}

TEST_CASE("thresholds hold in their own period only") {
    Thresholds set;
    set.range_high = 5;
    const auto series =
        checked_series(every(quarter, {9, 9, 9, 9}),
                       {{.from = Instant{quarter}, .to = Instant{3 * quarter}, .thresholds = set}}, {}, 15);
    CHECK(series.flags == std::vector{Flag::not_evaluated, Flag::fail, Flag::fail, Flag::not_evaluated});
}

TEST_CASE("a person's flag stands beside the checks and never fills what is missing") {
    Thresholds set;
    set.range_high = 5;
    const auto series = checked_series(every(quarter, {9, gone, 9, 1}), {{.thresholds = set}},
                                       {{Instant{0}, Instant{2 * quarter}, Flag::pass},
                                        {Instant{2 * quarter}, Instant{2 * quarter}, Flag::suspect}},
                                       15);
    CHECK(series.flags == std::vector{Flag::pass, Flag::missing, Flag::suspect, Flag::pass});
    CHECK(series.verdicts[0].range == Flag::fail);
    CHECK(series.readings[0].value == 9);
}

TEST_CASE("readings that came out of order are checked in order of time") {
    auto readings = every(quarter, {1, 2, 3});
    std::swap(readings[0], readings[2]);
    const auto series = checked_series(readings, {}, {}, std::nullopt);
    CHECK(series.readings.front().value == 1);
    CHECK(series.readings.back().value == 3);
}
