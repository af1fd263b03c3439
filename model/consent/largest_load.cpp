// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/largest_load.h"

#include <algorithm>

#include "model/consent/as_reported.h"
#include "model/consent/limit.h"
#include "model/consent/quantity_check.h"
#include "model/volume/table.h"

namespace spoilbook {

namespace {

std::optional<double> capacity_of(const Barge* barge) {
    if (barge == nullptr) return std::nullopt;
    if (barge->capacity_m3) return barge->capacity_m3;
    std::optional<double> most;
    for (const auto& row : barge->ullage_table) {
        if (row.size() > 1) most = std::max(most.value_or(0), row[1]);
    }
    return most;
}

/// The figures of the barge full to her capacity: with as many more buckets of the same mix or, before the
/// first one, with so much stated. What was read of her so far would say how much is in her now.
LoadFigures filled(const Ledger& done, const Load& load, double capacity_m3) {
    double scale = 0;
    const auto* tally = done.figures_of(load.id)->by(Method::tally);
    const double left_m3 = load.left_before_m3.value_or(0);
    if (tally != nullptr && tally->hopper_m3 && tally->hopper_m3->value > left_m3)
        scale = std::max(0.0, capacity_m3 - left_m3) / (tally->hopper_m3->value - left_m3);
    Load full = load;
    full.dips_m.clear();
    full.full_draughts_m.clear();
    full.stated_in_situ_m3.reset();
    full.stated_hopper_m3 = capacity_m3;
    Season alone = done.season();
    alone.tallies = {};
    for (const Tally* own : done.loads().tallies_of(load.id)) {
        Tally more = *own;
        if (scale > 0 && more.count) *more.count *= scale;
        if (scale > 0 && more.part_buckets) *more.part_buckets *= scale;
        alone.tallies.add(more);
    }
    Sources sources = done.sources();
    return figures(LoadIndex(alone, sources), full);
}

/// The mean dip at which so much is in her.
std::optional<double> ullage_at(const Barge& barge, double hopper_m3) {
    Table by_volume;
    for (const auto& row : barge.ullage_table) {
        if (row.size() > 1) by_volume.push_back({row[1], row[0]});
    }
    const auto point = LinearTable(by_volume).at(hopper_m3);
    return point ? std::optional(point->y) : std::nullopt;
}

/// What fits of the full barge, 0 to 1, in one reading of the factors.
struct Fit {
    double share = 1;
    Id bound_by;
    std::vector<Id> untold;
};

Fit fit_of(const Ledger& ledger, const PlannedRelease& planned) {
    Fit fit;
    const Season& season = ledger.season();
    for (const auto& condition : season.conditions.rows()) {
        if (condition.kind != "quantity" || !in_force(condition, planned.at)) continue;
        const auto quantity = quantity_from(condition, season.zone);
        if (!quantity) fit.untold.push_back(condition.id);
        if (!quantity || quantity->scope.activity == Activity::dredge || !quantity->at_most) continue;
        const QuantityCheck check(ledger, condition, *quantity, planned.load, planned.at, OwnBy::any_method);
        const auto share = check.largest_share();
        if (!share) {
            fit.untold.push_back(condition.id);
        } else if (*share < fit.share) {
            fit.share = *share;
            fit.bound_by = condition.id;
        }
    }
    return fit;
}

LargestLoad answer_of(const Season& season, const Barge& barge, const LoadFigures& full, const Fit& fit,
                      double capacity_m3) {
    LargestLoad largest;
    largest.hopper_m3 = capacity_m3 * fit.share;
    const auto* counted = full.counted_by();
    if (counted != nullptr && counted->in_situ_m3)
        largest.in_situ_m3 = counted->in_situ_m3->value * fit.share;
    if (const auto* tally = full.by(Method::tally)) {
        for (const auto& fact : tally->facts) {
            if (fact.name == "buckets") largest.buckets = fact.value * fit.share;
        }
    }
    largest.ullage_m = ullage_at(barge, largest.hopper_m3);
    largest.bound_by = season.conditions.find(fit.bound_by);
    for (const auto& id : fit.untold)
        largest.untold.push_back(season.conditions.find(id));
    return largest;
}

}  // namespace

std::optional<LargestLoad> largest_load(const Ledger& done, const PlannedRelease& planned) {
    const Season& season = done.season();
    const PlannedRelease release = completed(done, planned);
    const Load* load = season.loads.find(release.load);
    const Barge* barge = load == nullptr ? nullptr : season.barges.find(load->barge);
    const auto capacity_m3 = capacity_of(barge);
    if (!capacity_m3 || *capacity_m3 <= 0) return std::nullopt;
    const auto judged = [&](const Ledger& factors) {
        const auto full = filled(factors, *load, *capacity_m3);
        const Ledger ledger = ledger_with(factors, release, full);
        return answer_of(season, *barge, full, fit_of(ledger, release), *capacity_m3);
    };
    auto largest = judged(done);
    if (const auto reported = season_as_reported(season, release.at)) {
        auto other = judged(Ledger(*reported));
        if (other.hopper_m3 < largest.hopper_m3) largest = std::move(other);
    }
    return largest;
}

}  // namespace spoilbook
