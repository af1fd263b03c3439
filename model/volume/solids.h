// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "model/volume/readings.h"

namespace spoilbook {

/// What of one load is known before it is split over its parts. Blank: not known.
struct HopperContent {
    std::optional<Uncertain> hopper_m3;   ///< V_h
    std::optional<Uncertain> in_situ_m3;  ///< V_s
    std::optional<Uncertain> top_m3;      ///< V_top: spoil or the water on it
    std::optional<Uncertain> wet_t;       ///< where it was weighed; else it follows from the volumes
};

/// Fills in the amounts of the load and of each of its parts, the factor versions they used, and what they
/// assume. A part with its share w of V_h and V_top and its share of V_s:
///   wet t = V_s (ρ_situ − ρ_w) + ρ_w V_top,   dry t = V_s ρ_s (ρ_situ − ρ_w) / (ρ_s − ρ_w),
/// densities in t/m³; a load is known whole in a measure or not at all. Densities not above the water's are
/// taken as not recorded.
/// Source: mass balance as in ERDC TN-DOER-I2 (2000) and TN-DOER-T6 (2004).
void give_amounts(const LoadReadings& readings, const HopperContent& content, MethodResult& result);

/// V_top for a method's V_h: V_h and the water between the dips to the spoil and those to its top; without
/// dips to the spoil the higher of V_h and the top dips' volume; V_h where nothing was read on top. Blank
/// where the reading on top is outside the table.
std::optional<Uncertain> top_volume(const LoadReadings& readings, const std::optional<Uncertain>& hopper_m3);

/// In-place density over water's, where it is one: ρ_situ − ρ_w. Grain density likewise.
std::optional<Uncertain> above_water(const FactorVersion* density, double water_t_m3);

/// Notes a version as used, once.
void use_version(const FactorVersion* version, MethodResult& result);

}  // namespace spoilbook
