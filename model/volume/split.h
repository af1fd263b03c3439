// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "model/volume/load_index.h"
#include "model/volume/uncertain.h"

namespace spoilbook {

/// One tally line with everything looked up. Its material is its own, else the load's, else its station's
/// claim's.
struct TallyLine {
    Id claim;
    Id material;
    std::optional<double> buckets;  ///< count and part buckets; blank where neither is recorded
    std::optional<double> capacity_m3;
    FactorSet factors;

    /// n·C·f; nothing where one is missing, exactly zero where no bucket was counted.
    [[nodiscard]] std::optional<Uncertain> heap_m3() const;
};

/// What of a load has one claim and one material.
struct SplitPart {
    Id claim;
    Id material;
    FactorSet factors;
    Uncertain hopper_share{1};                  ///< V_h of the part / V_h of the load
    std::optional<Uncertain> in_situ_share{1};  ///< V_s of the part / V_s of the load
};

/// A load split over its tally lines: hopper volume ∝ n·C·f, in-situ volume ∝ n·C·f/B.
struct LoadSplit {
    std::vector<TallyLine> lines;
    std::vector<SplitPart> parts;              ///< at least one
    std::optional<Uncertain> situ_per_hopper;  ///< Σ w/B; nothing where a B is missing
    std::vector<std::string_view> assumed;
    bool by_heap = false;  ///< fill factors had a say in the shares
};

/// Where a line's n·C·f cannot be worked out: one part takes all where all lines have one claim and material;
/// else plain counts split it; else it stays one part of no claim and the load's material.
LoadSplit split_load(const LoadIndex& index, const Load& load);

/// A version as an uncertain number.
Uncertain uncertain(const FactorVersion& version);

}  // namespace spoilbook
