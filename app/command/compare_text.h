// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/answer/proposal_effect.h"
#include "model/answer/reconciliation.h"

namespace spoilbook {

/// What barges and bed say, for people; every figure with its unit, basis and uncertainty.
std::string compare_text(const Reconciliation& all, const std::vector<const ReconciledPeriod*>& shown);
std::string effect_text(const std::vector<LimitEffect>& effects);

}  // namespace spoilbook
