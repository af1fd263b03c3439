// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/untold_water.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

/// The version that judges then; where none holds, the last.
const SeriesRule& rule_at(const TriggerState& state, Instant at) {
    const auto& versions = state.of->trigger.versions;
    const auto held = std::find_if(versions.rbegin(), versions.rend(),
                                   [at](const SeriesVersion& version) { return version.holds_at(at); });
    return held == versions.rend() ? versions.back().rule : held->rule;
}

/// Rounded down: 74.9 % is not the 75 % that are asked for.
std::string too_few(const StatisticAt& statistic, double min_complete) {
    const auto percent = [](double share) { return std::floor(share * 100 + 1e-9); };
    return fmt::format("there are {:.0f} % of the readings, and the condition asks for {:.0f} %",
                       percent(statistic.complete), percent(min_complete));
}

}  // namespace

bool is_stale(const TriggerState& state, Instant at) {
    if (!state.standing.at) return true;
    const SeriesRule& rule = rule_at(state, at);
    const double minutes = std::max(rule.over_min, rule.max_age_hours * 60);
    return static_cast<double>(at - *state.standing.at) > minutes * static_cast<double>(ms_per_minute);
}

std::string why_site_is_not_told(const TriggerState& state, Instant at, const Zone& zone) {
    const SiteStanding& standing = state.standing;
    if (!standing.at) return "no reading of it is in the book";
    if (is_stale(state, at))
        return fmt::format("its last reading is of {}, too old to tell", instant_text(*standing.at, zone));
    if (standing.last.telling != Telling::cannot_tell) return "";
    const SeriesRule& rule = rule_at(state, *standing.at);
    if (!complete_enough(standing.last.statistic, rule.min_complete))
        return too_few(standing.last.statistic, rule.min_complete);
    const auto& control = standing.last.control;
    if (control && !complete_enough(*control, rule.min_complete))
        return fmt::format("of its control {} {}", rule.control, too_few(*control, rule.min_complete));
    return "its level cannot be told: what it is made from has too few readings";
}

}  // namespace spoilbook
