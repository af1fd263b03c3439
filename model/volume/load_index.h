// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <unordered_map>
#include <vector>

#include "model/record/season.h"
#include "model/volume/factors.h"
#include "model/volume/table.h"

namespace spoilbook {

/// A barge's tables, made ready for reading.
struct BargeTables {
    LinearTable hopper_m3;                         ///< by ullage m
    LinearTable displacement_t, tpc, lcf_m, mctc;  ///< by draught m; the last three empty where not given
};

/// What the figures of loads look up, made once from a season. The season must outlive it and not change.
/// Read only once made: several threads may use it at a time.
class LoadIndex {
 public:
    /// `accepted_by`: see FactorBook. Sources of shared uncertainty are named in `sources`.
    LoadIndex(const Season& season, Sources& sources, std::optional<Instant> accepted_by = std::nullopt);

    [[nodiscard]] const Season& season() const { return *season_; }
    [[nodiscard]] const FactorBook& factors() const { return factors_; }
    /// The load's tally lines in the season's order; empty where there are none.
    [[nodiscard]] std::span<const Tally* const> tallies_of(const Id& load) const;
    /// The barge's newest light reading at or before `at`; null where there is none.
    [[nodiscard]] const LightReading* light_reading(const Id& barge, Instant at) const;
    /// The shared source of a light reading: every load that uses it has the same error.
    [[nodiscard]] SourceId source_of(const LightReading& reading) const;
    /// Null for an unknown barge.
    [[nodiscard]] const BargeTables* tables_of(const Id& barge) const;
    /// The harbour's water, t/m³; 1.025 where not recorded.
    [[nodiscard]] double water_density_t_m3() const { return water_density_t_m3_; }

 private:
    struct Span {
        std::size_t first = 0;
        std::size_t count = 0;
    };
    void index_tallies();
    void index_light_readings(Sources& sources);
    void index_barges();

    const Season* season_;
    FactorBook factors_;
    double water_density_t_m3_;
    std::vector<const Tally*> tallies_;
    std::unordered_map<Id, Span> tallies_of_;
    std::unordered_map<Id, std::vector<const LightReading*>> light_readings_;
    std::unordered_map<Id, SourceId> light_sources_;
    std::unordered_map<Id, BargeTables> tables_;
};

}  // namespace spoilbook
