// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/day_rows.h"

#include <array>
#include <cmath>
#include <cstring>
#include <limits>

namespace spoilbook {

namespace {

constexpr std::size_t flags = 5;
constexpr std::size_t row_bytes = sizeof(std::int64_t) + sizeof(double) + flags;

std::array<Flag, flags> told(const Verdicts& verdicts) {
    return {verdicts.gap, verdicts.range, verdicts.spike, verdicts.rate, verdicts.flat};
}

}  // namespace

/// Column by column: it packs better, and so does the step from one time to the next.
std::string day_rows(const SiteSeries& series, std::size_t first, std::size_t last) {
    const std::size_t n = last - first;
    std::string bytes(n * row_bytes, '\0');
    char* times = bytes.data();
    char* values = times + n * sizeof(std::int64_t);
    char* verdicts = values + n * sizeof(double);
    std::int64_t before = 0;
    for (std::size_t i = 0; i < n; ++i) {
        const auto& reading = series.readings[first + i];
        const std::int64_t step = reading.time.utc_ms - before;
        const double value = reading.value.value_or(std::numeric_limits<double>::quiet_NaN());
        before = reading.time.utc_ms;
        std::memcpy(times + i * sizeof step, &step, sizeof step);
        std::memcpy(values + i * sizeof value, &value, sizeof value);
        const auto said = told(series.verdicts[first + i]);
        for (std::size_t k = 0; k < flags; ++k)
            verdicts[k * n + i] = static_cast<char>(said.at(k));
    }
    return bytes;
}

void append_day_rows(SiteSeries& series, const std::string& rows) {
    const std::size_t n = rows.size() / row_bytes;
    const char* times = rows.data();
    const char* values = times + n * sizeof(std::int64_t);
    const char* verdicts = values + n * sizeof(double);
    const auto flag = [&](std::size_t k, std::size_t i) { return static_cast<Flag>(verdicts[k * n + i]); };
    std::int64_t at = 0;
    for (std::size_t i = 0; i < n; ++i) {
        std::int64_t step = 0;
        double value = 0;
        std::memcpy(&step, times + i * sizeof step, sizeof step);
        std::memcpy(&value, values + i * sizeof value, sizeof value);
        at += step;
        series.readings.push_back({Instant{at}, std::isnan(value) ? std::nullopt : std::optional(value)});
        series.verdicts.push_back({flag(0, i), flag(1, i), flag(2, i), flag(3, i), flag(4, i)});
        series.flags.push_back(overall(series.verdicts.back()));
    }
}

}  // namespace spoilbook
