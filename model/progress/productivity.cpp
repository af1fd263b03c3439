// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/productivity.h"

#include <algorithm>
#include <map>

#include "model/progress/shift_timeline.h"

namespace spoilbook {

namespace {

std::optional<Estimate> divided(const Estimate& amount, double by) {
    if (by <= 0) return std::nullopt;
    return amount * (1 / by);
}

/// The dredger that filled a load, by its tally; nil where that does not say.
Id dredger_of(const Ledger& ledger, const Load& load) {
    const auto& season = ledger.season();
    for (const Tally* tally : ledger.loads().tallies_of(load.id)) {
        const Station* station = season.stations.find(tally->station);
        const Shift* shift = station == nullptr ? nullptr : season.shifts.find(station->shift);
        if (shift != nullptr) return shift->dredger;
    }
    return {};
}

/// The shift in which the load's loading ended: of its dredger, where it is known; null where there is none.
const ShiftHours* shift_of(const SeasonHours& hours, const LedgerLine& line, const Id& dredger) {
    auto after = std::lower_bound(hours.shifts.begin(), hours.shifts.end(), line.at,
                                  [](const ShiftHours& shift, Instant at) { return shift.time.from < at; });
    for (auto shift = after; shift != hours.shifts.begin();) {
        --shift;
        const bool fits = line.at <= shift->time.to && (dredger == Id{} || dredger == shift->shift->dredger);
        if (fits) return &*shift;
        if (line.at - shift->time.from > longest_open_ms) break;
    }
    return nullptr;
}

/// The row that holds the instant at which a load of this shift was full.
ProductivityRow* row_of(std::vector<ProductivityRow>& rows, const SeasonHours& hours, const ShiftHours& shift,
                        Instant at, HoursOver over) {
    // Every shift has a row of its own, in the same order.
    if (over == HoursOver::shift) return &rows[static_cast<std::size_t>(&shift - hours.shifts.data())];
    if (over == HoursOver::all) return &rows.front();
    const auto after =
        std::upper_bound(rows.begin(), rows.end(), at,
                         [](Instant asked, const ProductivityRow& row) { return asked < row.time.from; });
    return after == rows.begin() ? nullptr : &*std::prev(after);
}

/// Hours of the load's loading in which a dredger dug.
double operating_hours(const SeasonHours& hours_of, const Id& load) {
    const auto loading = hours_of.loading.find(load);
    if (loading == hours_of.loading.end()) return 0;
    double sum = 0;
    const Periods& whole = loading->second;
    const auto begins_by = [](const ShiftHours& shift, Instant at) { return shift.time.from < at; };
    auto shift = std::lower_bound(hours_of.shifts.begin(), hours_of.shifts.end(),
                                  whole.front().from - longest_open_ms, begins_by);
    for (; shift != hours_of.shifts.end() && shift->time.from < whole.back().to; ++shift)
        sum += hours(both(whole, shift->digging));
    return sum;
}

/// A load's tally lines as weights; empty where they do not tell all of it.
struct TallyWeight {
    const Bucket* bucket = nullptr;
    double buckets = 0;
    double heap_m3 = 0;  ///< rated
    std::optional<double> fill_factor;
};

std::vector<TallyWeight> weights_of(const Ledger& ledger, const Load& load) {
    const auto& season = ledger.season();
    std::vector<TallyWeight> weights;
    for (const Tally* tally : ledger.loads().tallies_of(load.id)) {
        const Bucket* bucket = season.buckets.find(tally->bucket);
        const double n = tally->count.value_or(0) + tally->part_buckets.value_or(0);
        if (bucket == nullptr || !bucket->capacity_m3) return {};
        if (n <= 0) continue;
        const Station* station = season.stations.find(tally->station);
        const Claim* claim = station == nullptr ? nullptr : season.claims.find(station->claim);
        Id material = tally->material == Id{} ? load.material : tally->material;
        if (material == Id{} && claim != nullptr) material = claim->material;
        const auto* fill = ledger.loads().factors().factors_for(material, bucket->id, load.loading_end).fill;
        weights.push_back({bucket, n, n * *bucket->capacity_m3,
                           fill == nullptr ? std::nullopt : std::optional(fill->value)});
    }
    return weights;
}

/// Adds up what one bucket did.
struct BucketSum {
    BucketRow row;
    Total in_situ;
    double filled = 0;  ///< Σ buckets · fill factor
    bool fill_known = true;
};

void add_load(std::map<const Bucket*, BucketSum>& sums, const std::vector<TallyWeight>& weights,
              double operating_h, const Estimate& in_situ) {
    double all_buckets = 0;
    double all_heap = 0;
    for (const auto& weight : weights) {
        all_buckets += weight.buckets;
        all_heap += weight.heap_m3;
    }
    std::map<const Bucket*, double> heaps;  // two lines of one load are not independent of each other
    for (const auto& weight : weights) {
        auto& sum = sums[weight.bucket];
        sum.row.bucket = weight.bucket;
        sum.row.buckets += weight.buckets;
        sum.row.operating_h += operating_h * weight.buckets / all_buckets;
        sum.fill_known = sum.fill_known && weight.fill_factor.has_value();
        sum.filled += weight.buckets * weight.fill_factor.value_or(0);
        heaps[weight.bucket] += weight.heap_m3;
    }
    for (const auto& [bucket, heap] : heaps)
        sums[bucket].in_situ.add(in_situ, heap / all_heap);
}

}  // namespace

std::optional<Estimate> ProductivityRow::per_operating_hour() const {
    return divided(in_situ_m3, time.digging_h);
}

std::optional<Estimate> ProductivityRow::per_shift() const {
    return divided(in_situ_m3, static_cast<double>(opened));
}

std::optional<Estimate> BucketRow::per_hour() const {
    return divided(in_situ_m3, operating_h);
}

std::optional<double> BucketRow::cycle_s() const {
    if (buckets <= 0 || operating_h <= 0) return std::nullopt;
    return 3600 * operating_h / buckets;
}

std::optional<double> BucketRow::hopper_m3_per_hour() const {
    const auto cycle = cycle_s();
    if (!cycle || !fill_factor) return std::nullopt;
    return bucket_production(*cycle, *bucket->capacity_m3, *fill_factor, 1);
}

Productivity productivity(const Ledger& ledger, const SeasonHours& hours, Instant as_at, HoursOver over) {
    Productivity found;
    for (auto& time : hours_over(hours, ledger.season().zone, over)) {
        ProductivityRow row;
        row.opened = static_cast<std::size_t>(std::count_if(
            time.shifts.begin(), time.shifts.end(),
            [&](const Shift* shift) { return over == HoursOver::all || *shift->start >= time.from; }));
        row.time = std::move(time);
        found.rows.push_back(std::move(row));
    }
    std::map<const ProductivityRow*, Total> totals;
    for (const auto& line : ledger.dredged()) {
        if (line.at > as_at) break;
        const ShiftHours* shift = shift_of(hours, line, dredger_of(ledger, *line.load));
        // Full at the very end of a month, or of a shift: within it.
        ProductivityRow* row =
            shift == nullptr ? nullptr : row_of(found.rows, hours, *shift, line.at - 1, over);
        if (row == nullptr) {
            ++found.outside_shifts;
            continue;
        }
        row->loads.push_back(&line);
        if (const auto amount = dredged_amount(line, "", Measure::in_situ_m3))
            totals[row].add(*amount);
        else
            ++row->unknown;
    }
    for (auto& row : found.rows)
        row.in_situ_m3 = totals[&row].estimate();
    return found;
}

std::vector<BucketRow> productivity_by_bucket(const Ledger& ledger, const SeasonHours& hours, Instant as_at) {
    std::map<const Bucket*, BucketSum> sums;
    for (const auto& line : ledger.dredged()) {
        if (line.at > as_at) break;
        const auto amount = dredged_amount(line, "", Measure::in_situ_m3);
        const auto weights = weights_of(ledger, *line.load);
        if (!amount || weights.empty()) continue;
        add_load(sums, weights, operating_hours(hours, line.load->id), *amount);
    }
    std::vector<BucketRow> rows;
    for (const auto& bucket : ledger.season().buckets.rows()) {
        const auto found = sums.find(&bucket);
        if (found == sums.end()) continue;
        BucketRow row = found->second.row;
        row.in_situ_m3 = found->second.in_situ.estimate();
        if (found->second.fill_known) row.fill_factor = found->second.filled / row.buckets;
        rows.push_back(row);
    }
    return rows;
}

double bucket_production(double cycle_s, double capacity, double fill_factor, double efficiency) {
    return 3600 / cycle_s * capacity * fill_factor * efficiency;
}

}  // namespace spoilbook
