// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "model/bed/surface_figures.h"
#include "model/consent/finding.h"

namespace spoilbook {

/// A condition of kind surface, read from its JSON. Levels in m, positive up; a depth is the level turned
/// round.
struct SurfaceRule {
    std::optional<double> no_deeper_than_m, least_depth_m, no_rise_m;
    std::optional<double> allowance_m;  ///< by which each may be passed
    double tolerance_share = 0;         ///< of the area that may be past it
    std::string survey;                 ///< the one that judges; blank: each that shows the place
    std::string baseline_survey;        ///< blank: the first of kind before that shows the place
    std::vector<std::string> claims, grounds, cells;  ///< where; all empty: everywhere that it is about
    bool stops_releases = false;  ///< it is about releases, and a response to it is to stop

    /// Whether it names no level itself, and so holds claims against their target level.
    [[nodiscard]] bool is_by_target() const { return !no_deeper_than_m && !least_depth_m && !no_rise_m; }
};

/// Nothing where the members do not read, or say neither a level nor an allowance.
std::optional<SurfaceRule> surface_rule_from(const nlohmann::json& body);

/// The bounds of a place, allowance taken in. `claim`: the one judged, null for a ground or cell. Nothing
/// where there is none: a claim without target level, a ground where the condition names no level.
std::optional<SurfaceBounds> bounds_of(const SurfaceRule& rule, const Claim* claim);

/// Whether a survey tells of a bound in a place: one of kind before tells what there was before the works,
/// and how deep a claim lies is told when it is dug, by one of kind after. The survey that the condition
/// names always does.
bool tells_of(const Survey& survey, const SurfaceRule& rule, const Claim* claim);

/// Complied where no more of the area than the tolerance may be past a bound, breached where more is past it
/// for sure; else it cannot be told. `why` in words, empty where it complied.
struct SurfaceJudged {
    Compliance state = Compliance::cannot_tell;
    std::string why;
};
SurfaceJudged judged(const SurfaceRule& rule, const SurfaceLook& look);

}  // namespace spoilbook
