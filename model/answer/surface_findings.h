// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/answer/survey_beds.h"
#include "model/consent/check_facts.h"
#include "model/consent/finding.h"
#include "model/consent/surface_rule.h"

namespace spoilbook {

/// Kind surface, after the act: each survey of the span that tells of a place that the condition is about,
/// held against its bounds there (surface_rule.h), by the version in force as the survey's day ended, in
/// order of time. A survey without a grid, or whose grid shows less than half of the place and nothing past
/// it, tells nothing, unless the condition names it: then it cannot be told. Empty too where the members do
/// not read or the book has no map.
std::vector<Finding> surface_findings(const Season& season, const Condition& condition,
                                      const JudgedSpan& span, SurveyBeds& beds);

/// "the book has no survey SV-9 yet", of the survey that judges or of the baseline that a rule names; empty
/// where they are there.
std::string survey_not_there(const Season& season, const SurfaceRule& rule);

/// How the bed of each ground and cell that the condition is about stood by the surveys whose day had ended
/// by `by`, whenever the condition began: breached where the last that could tell says so, else as the newest
/// says. Grounds and cells that none tells of are left out.
std::vector<BedState> newest_beds(const Season& season, const Condition& condition, Instant by,
                                  SurveyBeds& beds);

}  // namespace spoilbook
