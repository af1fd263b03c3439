// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "model/unit/estimate.h"

namespace spoilbook {

/// A value with its standard uncertainty (k = 1), nothing known of where it comes from.
struct Measured {
    double value = 0;
    double u = 0;
};

/// What of one material came from a claim between two surveys in loads whose in-situ volume is hopper volume
/// / B. The hopper volume does not hang on B, so its uncertainty holds everything but that of B.
struct BulkedPart {
    std::size_t material = 0;  ///< a number of the caller's
    Estimate hopper_m3;
};

/// One claim between two of its surveys: what the bed says, and what the barges say. In-situ m³ but for the
/// hopper volumes. A source of shared uncertainty has one number in every claim-period that is held together.
struct ClaimPeriod {
    Measured removed;                ///< by which the bed came down between the surveys
    Measured infill;                 ///< came in or slid in meanwhile, and was dug too
    Measured outside;                ///< dug from outside the claim into its loads
    Estimate barges_m3;              ///< Σ V_s at the factors in force, with the uncertainty of B
    Estimate weighed_m3;             ///< the part of it that does not hang on B: weighed, or stated in situ
    std::vector<BulkedPart> bulked;  ///< all the rest, each material once
};

/// Σ V_s held against what it should be, were nothing wrong: removed + infill + outside (calculations.md,
/// "Barges against the bed").
struct PeriodBalance {
    Measured bed;         ///< removed + infill + outside, their errors independent
    Measured difference;  ///< barges − bed
    /// ISO 13528: |barges − bed| / √(U₁² + U₂²), U = 2u. Over 1 they disagree. Nothing where both are exact.
    std::optional<double> e_n;
    /// Σ V_h / (bed − weighed): the bulking factor that would close this one alone, with the uncertainty of
    /// everything but B. Of the mix where several materials came. Nothing where either is not above 0.
    std::optional<Measured> closing_factor;
};

PeriodBalance balance(const ClaimPeriod& period);

}  // namespace spoilbook
