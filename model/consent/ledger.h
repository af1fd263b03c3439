// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

#include "model/place/ground_map.h"
#include "model/record/release_view.h"
#include "model/volume/load_figures.h"

namespace spoilbook {

/// One release or one dredged load, valued and placed: what limits and volumes add up.
struct LedgerLine {
    Instant at;                            ///< release end; for a dredged load, loading end
    const ReleaseView* release = nullptr;  ///< null for a dredged load
    const Load* load = nullptr;            ///< null for a release whose trip names no load
    const LoadFigures* figures = nullptr;  ///< null without a load
    std::uint32_t load_number = 0;         ///< numbers the loads; one of its own where there is none
    std::uint32_t trip_number = 0;
    double share = 1;
    Id ground, cell;              ///< cell as logged, else by position
    Day day;                      ///< local day of `at`
    std::optional<double> hours;  ///< doors open to shut, or loading; nothing where one is not recorded
};

/// A season's figures, made once and asked often. The season must outlive it and not change.
class Ledger {
 public:
    explicit Ledger(const Season& season);
    Ledger(const Ledger&) = delete;
    Ledger& operator=(const Ledger&) = delete;

    [[nodiscard]] const Season& season() const { return season_; }
    [[nodiscard]] const Sources& sources() const { return sources_; }
    [[nodiscard]] const LoadIndex& loads() const { return index_; }
    [[nodiscard]] const GroundMap& grounds() const { return grounds_; }
    [[nodiscard]] const std::vector<ReleaseView>& all_releases() const { return releases_; }
    /// Releases that count, ascending by release end.
    [[nodiscard]] const std::vector<LedgerLine>& released() const { return released_; }
    /// Those of one instant.
    [[nodiscard]] std::span<const LedgerLine> released_at(Instant at) const;
    /// Loads whose loading ended, ascending by it.
    [[nodiscard]] const std::vector<LedgerLine>& dredged() const { return dredged_; }
    /// Null for a load that the season does not have.
    [[nodiscard]] const LoadFigures* figures_of(const Id& load) const;

 private:
    void value_loads();
    void list_released();
    void list_dredged();

    const Season& season_;
    Sources sources_;
    LoadIndex index_;
    GroundMap grounds_;
    std::vector<ReleaseView> releases_;
    std::vector<LoadFigures> figures_;  ///< in the order of the season's loads
    std::unordered_map<Id, std::size_t> load_numbers_;
    std::vector<LedgerLine> released_, dredged_;
};

/// One method's amounts of a load: the named one, else the first that gives anything. Null: unknown.
const MethodResult* counted_method(const LedgerLine& line, const std::string& method, Measure measure);

/// What of a load was dredged for it, less what had lain in the hopper before. Nothing: unknown.
std::optional<Estimate> dredged_amount(const LedgerLine& line, const std::string& method, Measure measure);

}  // namespace spoilbook
