// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "model/volume/readings.h"

namespace spoilbook {

/// How much by weight: wet t = Δ_full − Δ_light + ρ_w · (water in the light hopper). Light she is by the
/// load's own light draughts, else by the barge's newest light reading at or before loading_start (blank:
/// loading_end). Where V_top is known (top dips, or dips less the water on the spoil, through the ullage
/// table):
///   V_s = (wet t − ρ_w V_top) / (ρ_situ − ρ_w),   dry t = ρ_s (wet t − ρ_w V_top) / (ρ_s − ρ_w);
/// for a load of several materials ρ_situ − ρ_w is Σ share · (ρ_situ − ρ_w) over in-situ shares. Else wet t
/// alone. V_h is by the dips, else V_s · B. Nothing where there are no draughts; nothing and one line in
/// `left_out` where one side is missing, marks are neither four nor six, a mean draught is outside the table,
/// or light she is heavier than loaded. u: draught_u_m is taken for the mean of the marks, through the
/// table's slope; it is random from load to load, but a light reading is shared by every load that uses it.
/// What trim and list do to u is left out: it is below a hundredth of it at a trim u of 0.02 m. Source: UNECE
/// Code of Uniform Standards for Draught Surveys (1992) as taught by P&I clubs; mass balance as in ERDC
/// TN-DOER-I5 (2000), p. 8.
std::optional<MethodResult> by_draughts(const LoadReadings& readings, std::vector<LeftOut>& left_out);

}  // namespace spoilbook
