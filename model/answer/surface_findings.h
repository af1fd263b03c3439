// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/answer/survey_beds.h"
#include "model/consent/check_facts.h"
#include "model/consent/finding.h"

namespace spoilbook {

/// Kind surface, after the act: each survey of the span that tells of a place that the condition is about,
/// held against its bounds there (surface_rule.h), by the version in force as the survey's day ended, place
/// by place in order of time. A survey without a grid, or whose grid lies elsewhere, tells nothing, unless
/// the condition names it: then it cannot be told. Empty too where the members do not read.
std::vector<Finding> surface_findings(const Season& season, const Condition& condition,
                                      const JudgedSpan& span, SurveyBeds& beds);

/// How the bed of each ground and cell that the condition is about stood by the newest survey that tells of
/// it, its day ended by `by`. Grounds and cells that none tells of are left out.
std::vector<BedState> newest_beds(const Season& season, const Condition& condition, Instant by,
                                  SurveyBeds& beds);

}  // namespace spoilbook
