// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/statistic_cursor.h"

#include <algorithm>
#include <cmath>

#include "model/unit/minutes.h"

namespace spoilbook {

namespace {

/// An instant is a whole millisecond, so (t − 1 ms, t] is t alone.
std::int64_t window_ms(const SiteSeries& series, double over_min, bool of_control) {
    if (over_min > 0) return ms_of_minutes(over_min);
    return of_control && series.interval_min > 0 ? ms_of_minutes(series.interval_min) : 1;
}

double nominal_count(const SiteSeries& series, double over_min) {
    if (over_min <= 0) return 1;
    return series.interval_min > 0 ? over_min / series.interval_min : 0;
}

}  // namespace

bool complete_enough(const StatisticAt& statistic, double min_complete) {
    return statistic.value && statistic.complete >= min_complete - 1e-9;
}

StatisticCursor::StatisticCursor(const SiteSeries& series, const StatisticRule& rule, double over_min,
                                 bool of_control)
    : series_(series),
      window_(rule),
      over_ms_(window_ms(series, over_min, of_control)),
      nominal_(nominal_count(series, over_min)) {}

StatisticAt StatisticCursor::at(Instant t) {
    const auto& readings = series_.readings;
    const Instant cut = t - over_ms_;
    if (!begun_) {
        // What has left the window already need not enter it.
        const auto first = std::partition_point(readings.begin(), readings.end(),
                                                [&](const auto& reading) { return reading.time <= cut; });
        next_ = static_cast<std::size_t>(first - readings.begin());
        begun_ = true;
    }
    for (; next_ < readings.size() && readings[next_].time <= t; ++next_) {
        if (counts(series_.flags[next_]) && readings[next_].time > cut)
            window_.add(readings[next_].time, *readings[next_].value);
    }
    window_.drop_until(cut);
    StatisticAt found;
    found.value = window_.value();
    if (nominal_ > 0) found.complete = static_cast<double>(window_.count()) / nominal_;
    return found;
}

}  // namespace spoilbook
