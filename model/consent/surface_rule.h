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
    /// Where; all empty: everywhere that it is about. Cells are those of the grounds, where both are named.
    std::vector<std::string> claims, grounds, cells;
    bool stops_releases = false;  ///< it is about releases, and a response to it is to stop

    /// Whether it names no level itself, and so holds claims against their target level.
    [[nodiscard]] bool is_by_target() const { return !no_deeper_than_m && !least_depth_m && !no_rise_m; }
};

/// Nothing where the members do not read, or say neither a level nor an allowance.
std::optional<SurfaceRule> surface_rule_from(const nlohmann::json& body);

/// Why a rule cannot be read, in words.
inline constexpr const char* no_bound = "it says neither a level nor an allowance to hold the bed against";

/// The bounds of a place, allowance taken in. `claim`: the one judged, null for a ground or cell. How deep a
/// claim lies at least is told when it is dug: by a survey of kind after, or the one that the condition
/// names. Empty where there is none: a claim without target level, or nothing that this survey tells.
SurfaceBounds bounds_of(const SurfaceRule& rule, const Claim* claim, const Survey& survey);

/// Whether a survey judges at all: one of kind before tells what there was before the works, and the baseline
/// is what others are held against. The survey that the condition names always does, and no other then.
bool judges(const SurfaceRule& rule, const Survey& survey);

/// Complied where no more of the area than the tolerance may be past a bound, breached where more is past it
/// for sure; else it cannot be told. `why` in words; where it complied, what there is
/// to spare.
struct SurfaceJudged {
    Compliance state = Compliance::cannot_tell;
    std::string why;
};
SurfaceJudged judged(const SurfaceRule& rule, const SurfaceLook& look);

}  // namespace spoilbook
