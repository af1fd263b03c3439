// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/answer/survey_beds.h"
#include "model/consent/finding.h"

namespace spoilbook {

/// Kind surface, after the act: each survey of the span that tells of a place that the condition is about,
/// held against its bounds there (surface_rule.h), by the version in force as the survey's day ended, place
/// by place in order of time. A survey without a grid, or whose grid lies elsewhere, tells nothing, unless
/// the condition names it: then it cannot be told. Empty too where the members do not read.
std::vector<Finding> surface_findings(const Ledger& ledger, const Condition& condition,
                                      const JudgedSpan& span, SurveyBeds& beds);

}  // namespace spoilbook
