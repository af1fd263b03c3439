// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "model/volume/agreement.h"
#include "model/volume/load_index.h"
#include "model/volume/method.h"

namespace spoilbook {

/// One claim's and material's share of a load; nil where none is recorded. Hopper volume is split by n·C·f,
/// in-situ volume by n·C·f/B; the in-situ share is blank where a bulking factor is missing and materials
/// differ. Shares of a load add up to 1.
struct LoadPart {
    Id claim;
    Id material;
    double hopper_share = 1;
    std::optional<double> in_situ_share;
};

/// Everything that a load's readings say, calculations.md sections 1 and 2.
struct LoadFigures {
    std::vector<LoadPart> parts;        ///< at least one; each claim and material once
    std::vector<MethodResult> methods;  ///< in the order ullage, draughts, tally, stated
    std::vector<LeftOut> left_out;
    std::vector<Agreement> agreements;  ///< each pair of methods that can be compared

    /// Null where the readings do not allow it.
    [[nodiscard]] const MethodResult* by(Method method) const;
    /// The method that counts: the one named, else the first of the order, that gives the measure (no measure
    /// named: hopper or in-situ volume). Null where none does: the load is unknown, not zero.
    [[nodiscard]] const MethodResult* counted_by(std::optional<Method> named = std::nullopt,
                                                 std::optional<Measure> measure = std::nullopt) const;
};

/// Factors are those in force at loading_end (blank: loading_start; both blank: materials.csv).
LoadFigures figures(const LoadIndex& index, const Load& load);

}  // namespace spoilbook
