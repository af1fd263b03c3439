// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/unit/refusal.h"
#include "model/volume/load_figures.h"

namespace spoilbook {

/// What is odd about a load's readings; they are kept and counted all the same. Noted: a method that is left
/// out and why; dips or draughts outside their table that would be inside it as centimetres; dips that lie
/// apart by over half of their table; water on the spoil that reads lower than the spoil; a hopper volume
/// over the barge's capacity by more than 2u; a weighed load that would be heavier than quartz (2.65 t/m³);
/// more left in the hopper before than the load
/// holds; two methods that disagree (E_n over 1). Thresholds: common practice, no source.
Notes load_notes(const LoadIndex& index, const Load& load, const LoadFigures& figures);

}  // namespace spoilbook
