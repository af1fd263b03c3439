// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "model/record/consent.h"
#include "model/turbidity/rolling_statistic.h"
#include "model/unit/checked.h"
#include "model/unit/zone.h"

namespace spoilbook {

/// A level that holds while the control's statistic lies in [control_from, control_to).
struct Band {
    std::optional<double> control_from, control_to;
    std::optional<double> absolute, above_control, times_control;  ///< one of them
};

/// A level made from readings of a chosen period: times · percentile + plus.
struct Baseline {
    std::optional<double> percentile;  ///< 0 to 100, of the good readings of `site` in [from, to)
    std::optional<double> value;       ///< stands in place of the percentile
    std::string site;                  ///< blank: the site that is judged
    std::optional<Instant> from, to;
    double times = 1, plus = 0;
};

enum class CompareForm {
    absolute,
    above_control,
    times_control,
    higher_of,
    bands,
    baseline,
    paired_above_control
};

/// What a statistic is held against. Strictly above the level is over.
struct Compare {
    CompareForm form = CompareForm::absolute;
    double x = 0;                ///< the level, what is added to the control, or its factor
    std::vector<Compare> parts;  ///< of higher_of: over all of them is over the highest
    std::vector<Band> bands;
    Baseline baseline;
    double lag_min = 0;                   ///< of pairs: the control's reading is so much earlier
    std::optional<double> tolerance_min;  ///< of pairs; none: half the control's interval
};

/// When a statistic over its level becomes an event.
struct Passing {
    enum class Kind { held, hours_in } kind = Kind::held;
    double held_hours = 0;       ///< 0: at once
    double hours = 0, days = 0;  ///< so many hours over within so many days
};

struct AllClear {
    enum class Sites { same, all, listed } sites = Sites::same;
    std::vector<std::string> listed;
    double held_hours = 0;
};

struct Within {
    double n = 0;
    std::string unit;  ///< hours, days, working_days, months
};

struct Response {
    std::optional<double> tier;  ///< none: of every tier
    std::string action;          ///< tell, check, slow, move, change_cell, stop
    std::optional<Within> within;
    std::string to;
};

/// A condition of kind series, read from its JSON (docs/conditions.md).
struct SeriesRule {
    std::string variable;            ///< turbidity, wave_height_m, wind_kn
    std::string activity;            ///< dredge, release or both: whose work it watches
    std::vector<std::string> sites;  ///< empty: every impact site
    std::string control;             ///< blank: none
    StatisticRule statistic;
    double over_min = 0;  ///< 0: the reading alone
    double min_complete = 0;
    Compare compare;
    bool only_working = false;  ///< passes only while the work goes on, and `plus_hours` after
    double plus_hours = 0;
    Passing passes;
    std::optional<double> tier;
    AllClear clear;
    std::vector<Response> responses;
    double max_age_hours = 3;  ///< how old the last observation may be
};

/// Reads the members of a condition of kind series. Times without an offset are read in `zone`. The members
/// were checked when the condition entered the book; what still does not read is refused.
Checked<SeriesRule> series_rule_from(const Condition& condition, const Zone& zone);

}  // namespace spoilbook
