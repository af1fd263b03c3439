// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <memory>

#include "model/turbidity/series_rule.h"
#include "model/turbidity/statistic_cursor.h"

namespace spoilbook {

enum class Telling { over, not_over, cannot_tell };

/// How a site stands against a condition's level at one reading.
struct Judged {
    Telling telling = Telling::cannot_tell;
    StatisticAt statistic;  ///< of the site
    std::optional<StatisticAt> control;
    /// What is held against the level: the statistic, or that of the pairs. It is told where it is complete
    /// enough, also where the level is not known: a peak does not vanish with its control.
    std::optional<double> compared;
    std::optional<double> level;  ///< nothing where none is set or it is not known
};

/// The checked series of a site by its name; null where there is none.
using SeriesOf = std::function<const SiteSeries*(const std::string& site)>;

/// Judges one site under one version of a condition, forward in time. Cannot tell: the statistic, the
/// control's or the pairs' is below min_complete, or a baseline has no readings; of higher_of, where that is
/// so of any part. Where the control lies in none of the bands no level is set, and nothing is over it.
/// Over is more than the level by more than the rounding of sums, 10⁻⁹ of it.
class LevelJudge {
 public:
    /// Rule and series must outlive it.
    LevelJudge(const SeriesRule& rule, const SiteSeries& site, const SeriesOf& series_of);

    /// REQUIRES t not before the last one asked for.
    Judged at(Instant t);

 private:
    struct Part;
    struct Outcome {
        Telling telling = Telling::cannot_tell;
        std::optional<double> compared, level;
    };
    std::unique_ptr<Part> part_of(const Compare& compare, const SiteSeries& site, const SeriesOf& series_of);
    Outcome outcome(Part& part, const Judged& judged, Instant t);
    Outcome highest(Part& part, const Judged& judged, Instant t);
    [[nodiscard]] Outcome against(const Judged& judged, std::optional<double> level) const;

    const SeriesRule& rule_;
    StatisticCursor own_;
    std::optional<StatisticCursor> control_;
    std::shared_ptr<Part> compare_;
};

}  // namespace spoilbook
