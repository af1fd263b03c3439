// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/reading_sum.h"

#include <algorithm>

#include "model/turbidity/sample_quantile.h"

namespace spoilbook {

namespace {

void lower(std::optional<double>& least, const std::optional<double>& value) {
    if (value && (!least || *value < *least)) least = value;
}

void raise(std::optional<double>& most, const std::optional<double>& value) {
    if (value && (!most || *value > *most)) most = value;
}

std::optional<double> median_of(std::vector<double> values) {
    if (values.empty()) return std::nullopt;
    return sample_quantile(std::move(values), 0.5, 7);
}

}  // namespace

ReadingSum sum_of(const SiteSeries& series, std::size_t first, std::size_t last) {
    ReadingSum sum;
    std::vector<double> counted;
    for (std::size_t i = first; i < last; ++i) {
        const auto& value = series.readings[i].value;
        const Flag flag = series.flags[i];
        ++sum.readings;
        lower(sum.raw_low, value);
        raise(sum.raw_high, value);
        sum.suspect += flag == Flag::suspect ? 1 : 0;
        sum.failed += flag == Flag::fail ? 1 : 0;
        sum.missing += flag == Flag::missing ? 1 : 0;
        if (!counts(flag) || !value) continue;
        lower(sum.low, value);
        raise(sum.high, value);
        counted.push_back(*value);
    }
    sum.counted = counted.size();
    sum.middle = median_of(std::move(counted));
    return sum;
}

ReadingSum sum_of(const std::vector<ReadingSum>& parts) {
    if (parts.size() == 1) return parts.front();
    ReadingSum sum;
    std::vector<double> middles;
    for (const auto& part : parts) {
        sum.readings += part.readings;
        sum.counted += part.counted;
        sum.suspect += part.suspect;
        sum.failed += part.failed;
        sum.missing += part.missing;
        lower(sum.raw_low, part.raw_low);
        raise(sum.raw_high, part.raw_high);
        lower(sum.low, part.low);
        raise(sum.high, part.high);
        if (part.middle) middles.push_back(*part.middle);
    }
    sum.middle = median_of(std::move(middles));
    return sum;
}

std::size_t first_from(const SiteSeries& series, Instant at) {
    const auto found = std::partition_point(series.readings.begin(), series.readings.end(),
                                            [&](const auto& reading) { return reading.time < at; });
    return static_cast<std::size_t>(found - series.readings.begin());
}

}  // namespace spoilbook
