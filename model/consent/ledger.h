// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <span>
#include <unordered_map>
#include <vector>

#include "model/consent/counted_loads.h"
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
    const CountedLoad* counted = nullptr;  ///< of the figures: null with them
    std::uint32_t load_number = 0;         ///< numbers the loads; one of its own where there is none
    std::uint32_t trip_number = 0;
    double share = 1;
    Id ground, cell;              ///< cell as logged, else by position
    Id material, barge;           ///< the load's; nil without one
    Day day;                      ///< local day of `at`
    std::optional<double> hours;  ///< doors open to shut, or loading; nothing where one is not recorded
};

/// A season's figures, made once and asked often. The season must outlive it and not change.
class Ledger {
 public:
    explicit Ledger(const Season& season);
    /// What `done` would be with other trips: each of `instead` is one release, in place of all releases of
    /// the load that it names. Of a load in `rest_of` what had been released by the trip's release end stays,
    /// and the trip releases that share of it. Nothing is valued anew: only released() differs, and the
    /// figures of the first trip's load where `figures_of_first` gives them. `done` need not outlive it.
    Ledger(const Ledger& done, std::vector<Trip> instead,
           std::optional<LoadFigures> figures_of_first = std::nullopt,
           std::unordered_map<Id, double> rest_of = {});
    Ledger(const Ledger&) = delete;
    Ledger& operator=(const Ledger&) = delete;

    [[nodiscard]] const Season& season() const { return done_->season; }
    [[nodiscard]] const Sources& sources() const { return done_->sources; }
    [[nodiscard]] const LoadIndex& loads() const { return done_->index; }
    [[nodiscard]] const GroundMap& grounds() const { return done_->grounds; }
    /// Those of the season.
    [[nodiscard]] const std::vector<ReleaseView>& all_releases() const { return done_->releases; }
    /// The trips that this ledger has in place of others; empty of what was done.
    [[nodiscard]] const std::vector<Trip>& instead() const { return instead_; }
    /// The share that the trip of a load is thought to release; nothing: all of the load.
    [[nodiscard]] std::optional<double> rest_of(const Id& load) const;
    /// Releases that count, ascending by release end.
    [[nodiscard]] const std::vector<LedgerLine>& released() const { return released_; }
    /// Loads whose loading ended, ascending by it.
    [[nodiscard]] const std::vector<LedgerLine>& dredged() const { return done_->dredged; }
    /// Null for a load that the season does not have.
    [[nodiscard]] const LoadFigures* figures_of(const Id& load) const;

 private:
    /// What does not depend on which releases are asked about.
    struct Done {
        explicit Done(const Season& of);
        [[nodiscard]] std::vector<LoadFigures> valued() const;
        void list_dredged();
        /// What a line says of its load. The load must be the season's.
        void put_load(const Load& load, LedgerLine& line) const;

        const Season& season;
        Sources sources;
        LoadIndex index;
        GroundMap grounds;
        std::vector<ReleaseView> releases;
        std::vector<LoadFigures> figures;  ///< in the order of the season's loads
        CountedLoads counted;              ///< likewise
        std::vector<LedgerLine> dredged;
    };

    void list_released();
    [[nodiscard]] LedgerLine line_of(const ReleaseView& release, std::uint32_t trip_number) const;

    std::shared_ptr<const Done> done_;
    std::vector<LedgerLine> released_;
    std::uint32_t next_trip_ = 0;
    std::vector<Trip> instead_;
    std::unordered_map<Id, double> rest_of_;
    std::vector<ReleaseView> instead_releases_;
    std::optional<LoadFigures> figures_of_first_;
    std::optional<CountedLoads> counted_of_first_;
};

/// Those of ascending lines from `from` to `to`, both included; nothing: no such end.
std::span<const LedgerLine> lines_between(const std::vector<LedgerLine>& lines, std::optional<Instant> from,
                                          std::optional<Instant> to);

/// One method's amounts of a load: the named one, else the first that gives anything. Null: unknown.
const MethodResult* counted_method(const LedgerLine& line, const std::string& method, Measure measure);

/// What of a load was dredged for it, less what had lain in the hopper before. Nothing: unknown.
std::optional<Estimate> dredged_amount(const LedgerLine& line, const std::string& method, Measure measure);

}  // namespace spoilbook
