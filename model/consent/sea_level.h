// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>

#include "model/record/season.h"
#include "model/turbidity/series_rule.h"
#include "model/turbidity/site_series.h"

namespace spoilbook {

/// Whether the sea or the wind was over a condition's level; nothing where that cannot be told.
struct SeaAnswer {
    std::optional<bool> over;
    std::string why;  ///< in words: how much over what, or what is missing; empty where it is not over
    std::optional<double> value = std::nullopt,
                          level = std::nullopt;  ///< what was held against what, if told
};

/// A condition of kind series on wave height (m) or wind (kn), held against what was observed: the same
/// statistics, comparisons and control as of a logger (level_judge.h), with the rows of observations.csv for
/// readings. `sites` and `control` are places of observations; without sites every observation counts.
class SeaLevel {
 public:
    SeaLevel(const Season& season, SeriesRule rule);

    [[nodiscard]] const SeriesRule& rule() const { return rule_; }
    /// Judged at the last reading not after `at` and not older than the condition's max_age_hours: `own`, as
    /// of `at`, where it is known and no sites are named, else the last observation. A level that must be
    /// passed for hours cannot be told where it is over now.
    [[nodiscard]] SeaAnswer at(Instant at, std::optional<double> own) const;

 private:
    [[nodiscard]] SiteSeries readings_until(Instant at, std::optional<double> own) const;
    [[nodiscard]] std::string number(double value) const;

    SeriesRule rule_;
    SiteSeries seen_;                           ///< at the sites
    std::map<std::string, SiteSeries> places_;  ///< by name: a control, a baseline's site
};

}  // namespace spoilbook
