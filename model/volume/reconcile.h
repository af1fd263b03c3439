// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "model/volume/reconcile_period.h"

namespace spoilbook {

/// What the book holds a material's bulking factor to be before the claim-periods are asked.
struct BulkingPrior {
    double value = 0;
    std::optional<double> u;  ///< not recorded, or 0: it says where to begin and has no weight
};

/// The one bulking factor of a material that closes all its claim-periods at once.
struct BulkingFit {
    std::size_t material = 0;
    double value = 0, u = 0;
    /// 95 %: value ± 1.96 u; where the claim-periods scatter more than their uncertainties allow (p < 0.05),
    /// ± t(0.975, dof) · u · √(χ²/dof) instead (Birge's ratio).
    double low = 0, high = 0;
    std::size_t group = 0;  ///< in Reconciled::groups
};

/// Materials and claim-periods that hang together, by a claim-period that holds both or by what they share,
/// and so are solved as one.
struct FitGroup {
    std::vector<std::size_t> periods;
    std::vector<std::size_t> materials;
    double chi_square = 0;          ///< of claim-periods and priors at the solution
    int dof = 0;                    ///< claim-periods + priors − materials
    std::optional<double> p_value;  ///< nothing where dof is 0
    std::string_view why_not;       ///< why there is no solution; empty where there is
};

struct Reconciled {
    std::vector<BulkingFit> fits;  ///< ascending by material; those of solved groups
    std::vector<FitGroup> groups;
    /// For each claim-period bed − barges at the fitted factors, m³, with the uncertainty that the fit gave
    /// it; nothing where its group has no solution.
    std::vector<std::optional<Measured>> residuals;
    double chi_square = 0;  ///< of all solved groups
    int dof = 0;
    std::optional<double> p_value;
};

/// Least squares with prior over all claim-periods at once: χ² = rᵀ V⁻¹ r + Σ ((B − prior) / u)², r being bed
/// − barges. V holds the surveys' and the loads' own parts on its diagonal and, off it, what claim-periods
/// share on the barges' side (fill factors, light readings); not B's own uncertainty, since B is what is
/// asked for. V is taken at the fitted factors and the solution iterated until it stands (iterated
/// generalized least squares; JCGM 100:2008 (GUM) 5.2 for V). Surveys are taken as independent of each other.
/// `priors` by material number; nothing where the book has no factor. Materials without evidence are left
/// out.
Reconciled reconcile(std::span<const ClaimPeriod> periods,
                     std::span<const std::optional<BulkingPrior>> priors);

}  // namespace spoilbook
