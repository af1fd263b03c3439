// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <deque>
#include <optional>

#include "model/turbidity/sorted_window.h"
#include "model/unit/instant.h"

namespace spoilbook {

enum class StatisticKind { mean, median, percentile, ewma, instant };

/// Which statistic of the readings in a window a condition names.
struct StatisticRule {
    StatisticKind kind = StatisticKind::instant;
    double p = 50;                        ///< of a percentile, 0 to 100
    int type = 7;                         ///< Hyndman and Fan's definition of the percentile
    std::optional<double> half_life_min;  ///< of an ewma, by time; else by reading:
    double alpha = 0.5;                   ///< weight (1 − alpha)^k of the reading k before the newest

    bool operator==(const StatisticRule&) const = default;
};

/// A statistic of a window that moves forward in time. Readings enter at its front, in order of time, and
/// leave at its back; each costs a search among those in the window, never a walk through all of them.
/// ewma: Σ w x / Σ w over the readings in the window, w halving each half_life_min of age, or as alpha says
/// (pandas' ewm, adjust = True, cut to the window). instant: the newest reading in the window.
class RollingStatistic {
 public:
    explicit RollingStatistic(const StatisticRule& rule) : rule_(rule) {}

    void add(Instant at, double value);
    /// Readings at or before this instant leave.
    void drop_until(Instant at);
    /// Nothing where the window is empty.
    [[nodiscard]] std::optional<double> value() const;
    [[nodiscard]] std::size_t count() const { return held_.size(); }

 private:
    struct Held {
        Instant at;
        double value = 0;
    };
    [[nodiscard]] bool ordered() const {
        return rule_.kind == StatisticKind::median || rule_.kind == StatisticKind::percentile;
    }
    /// The weight of a reading that is so much older, and so many readings back, than the newest.
    [[nodiscard]] double weight(std::int64_t age_ms, std::size_t back) const;
    void forget();

    StatisticRule rule_;
    std::deque<Held> held_;
    SortedWindow sorted_;
    long double sum_ = 0;  ///< of the mean; wide, so that millions in and out leave no trace
    double weighted_ = 0, weights_ = 0;
};

}  // namespace spoilbook
