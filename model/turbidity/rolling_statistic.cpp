// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/rolling_statistic.h"

#include <cmath>

#include "model/turbidity/sample_quantile.h"

namespace spoilbook {

double RollingStatistic::weight(std::int64_t age_ms, std::size_t back) const {
    if (rule_.half_life_min)
        return std::exp2(-static_cast<double>(age_ms) /
                         (*rule_.half_life_min * static_cast<double>(ms_per_minute)));
    return std::pow(1 - rule_.alpha, static_cast<double>(back));
}

void RollingStatistic::add(Instant at, double value) {
    if (ordered()) sorted_.insert(value);
    if (rule_.kind == StatisticKind::mean) sum_ += value;
    if (rule_.kind == StatisticKind::ewma) {
        const double fade = held_.empty() ? 0 : weight(at - held_.back().at, 1);
        weighted_ = weighted_ * fade + value;
        weights_ = weights_ * fade + 1;
    }
    held_.push_back({at, value});
}

void RollingStatistic::drop_until(Instant at) {
    while (!held_.empty() && held_.front().at <= at) {
        const Held gone = held_.front();
        if (ordered()) sorted_.erase(gone.value);
        if (rule_.kind == StatisticKind::mean) sum_ -= gone.value;
        if (rule_.kind == StatisticKind::ewma) {
            const double left = weight(held_.back().at - gone.at, held_.size() - 1);
            weighted_ -= left * gone.value;
            weights_ -= left;
        }
        held_.pop_front();
    }
    if (held_.empty()) forget();
}

void RollingStatistic::forget() {
    sum_ = 0;
    weighted_ = weights_ = 0;
}

std::optional<double> RollingStatistic::value() const {
    if (held_.empty()) return std::nullopt;
    switch (rule_.kind) {
        case StatisticKind::mean:
            return static_cast<double>(sum_ / static_cast<long double>(held_.size()));
        case StatisticKind::median:
            return sample_quantile(sorted_, 0.5, 7);
        case StatisticKind::percentile:
            return sample_quantile(sorted_, rule_.p / 100, rule_.type);
        case StatisticKind::ewma:
            return weighted_ / weights_;
        case StatisticKind::instant:
            break;
    }
    return held_.back().value;
}

}  // namespace spoilbook
