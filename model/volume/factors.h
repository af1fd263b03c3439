// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <unordered_map>
#include <vector>

#include "model/record/season.h"
#include "model/unit/estimate.h"

namespace spoilbook {

/// One version of one factor of one material. A density is in t/m³, bulking and fill are ratios; u is a
/// standard uncertainty in the unit of the value, 0 where none is recorded.
struct FactorVersion {
    double value = 0;
    double u = 0;
    SourceId source = 0;          ///< its name in Sources: "bulking factor of sand from 2026-03-01"
    std::optional<Instant> from;  ///< blank: materials.csv, as the book began
    std::optional<Instant> accepted;
    bool revised = false;  ///< a row of factors.csv
};

/// What is in force; null where there is none. The versions live as long as their FactorBook.
struct FactorSet {
    const FactorVersion* bulking = nullptr;
    const FactorVersion* fill = nullptr;
    const FactorVersion* situ_density = nullptr;
    const FactorVersion* grain_density = nullptr;
};

/// Every version of every factor, made once from a season.
class FactorBook {
 public:
    /// Registers each version's name in `sources`. With `accepted_by`, only those rows of factors.csv count
    /// that the authority had accepted by then (figures as reported, not as restated).
    FactorBook(const Season& season, Sources& sources, std::optional<Instant> accepted_by = std::nullopt);

    /// The newest row of factors.csv with from ≤ at, the later row of two that start together; a row that
    /// names the bucket beats one that names none; else materials.csv. `at` blank: materials.csv. A row
    /// without a value, from or material decides nothing. `bucket` may be nil.
    [[nodiscard]] FactorSet factors_for(const Id& material, const Id& bucket,
                                        std::optional<Instant> at) const;

 private:
    struct Dated {
        Id bucket;  ///< nil: every bucket
        FactorVersion version;
    };
    struct Versions {
        std::optional<FactorVersion> first;
        std::vector<Dated> dated;  ///< ascending by from, ties in the season's order
    };
    using OfMaterial = std::array<Versions, 4>;  ///< bulking, fill, situ_density, grain_density

    void add_materials(const Season& season, Sources& sources);
    void add_dated(const Season& season, Sources& sources, std::optional<Instant> accepted_by);
    static const FactorVersion* in_force(const Versions& versions, const Id& bucket,
                                         std::optional<Instant> at);

    std::unordered_map<Id, OfMaterial> by_material_;
};

}  // namespace spoilbook
