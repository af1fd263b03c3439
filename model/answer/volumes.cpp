// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/volumes.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>

#include "model/consent/random_parts.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

constexpr std::array names{"claim", "month", "ground", "cell", "material", "barge"};
constexpr std::array measures{Measure::hopper_m3, Measure::in_situ_m3, Measure::wet_t, Measure::dry_t};

using Key = std::optional<std::string>;
using Keys = std::vector<Key>;

/// Blank last, so that what has a name comes first.
struct BlankLast {
    bool operator()(const Keys& a, const Keys& b) const {
        return std::lexicographical_compare(a.begin(), a.end(), b.begin(), b.end(),
                                            [](const Key& x, const Key& y) {
                                                if (x.has_value() != y.has_value()) return x.has_value();
                                                return x < y;
                                            });
    }
};

struct Sum {
    std::array<Total, 4> totals;
    std::array<RandomParts, 4> random;
    std::array<bool, 4> known{};
    std::set<std::uint32_t> loads, trips, unknown;

    void add(std::size_t i, std::uint32_t load, const Estimate& amount, double share) {
        totals[i].add(amount, share);
        random[i].add_of_load(load, amount.u_random * share);
        known[i] = true;
    }
    /// Nothing where no load is known; what nothing was released into is zero, and known to be.
    [[nodiscard]] std::optional<Estimate> estimate(std::size_t i) const {
        if (!known[i] && trips.empty()) return Estimate{};
        if (!known[i]) return std::nullopt;
        Estimate sum = totals[i].estimate();
        sum.u_random = random[i].u();
        return sum;
    }
};

template <class R>
Key label(const Shelf<R>& shelf, const Id& id, std::string R::*member) {
    const R* row = shelf.find(id);
    return row == nullptr ? Key{} : Key{row->*member};
}

Key key_of(GroupBy by, const LedgerLine& line, const LoadPart* part, const Season& season) {
    const Load none;
    const Load& load = line.load != nullptr ? *line.load : none;
    switch (by) {
        case GroupBy::claim:
            return part == nullptr ? Key{} : label(season.claims, part->claim, &Claim::claim);
        case GroupBy::month:
            return month_text(line.day);
        case GroupBy::ground:
            return label(season.grounds, line.ground, &Ground::ground);
        case GroupBy::cell:
            return label(season.cells, line.cell, &Cell::cell);
        case GroupBy::material:
            return label(season.materials, load.material, &Material::material);
        case GroupBy::barge:
            break;
    }
    return label(season.barges, load.barge, &Barge::name);
}

class Grouping {
 public:
    Grouping(const Season& season, const std::vector<GroupBy>& by) : season_(season), by_(by) {
        by_claim_ = std::find(by.begin(), by.end(), GroupBy::claim) != by.end();
        if (by.empty()) sums_[Keys{}];
    }

    void add(const LedgerLine& line) {
        const std::size_t parts = by_claim_ && line.figures != nullptr ? line.figures->parts.size() : 1;
        for (std::size_t i = 0; i < parts; ++i)
            add_part(line, i);
    }

    [[nodiscard]] std::vector<VolumeRow> rows() const {
        std::vector<VolumeRow> rows;
        for (const auto& [keys, sum] : sums_) {
            VolumeRow row{keys, sum.loads.size(), sum.trips.size(), {}, sum.unknown.size()};
            row.amounts = {sum.estimate(0), sum.estimate(1), sum.estimate(2), sum.estimate(3)};
            rows.push_back(std::move(row));
        }
        return rows;
    }

 private:
    void add_part(const LedgerLine& line, std::size_t i) {
        const LoadPart* part = line.figures != nullptr ? &line.figures->parts[i] : nullptr;
        Keys keys;
        for (const auto by : by_)
            keys.push_back(key_of(by, line, part, season_));
        Sum& sum = sums_[keys];
        if (line.load != nullptr) sum.loads.insert(line.load_number);
        sum.trips.insert(line.trip_number);
        for (std::size_t m = 0; m < measures.size(); ++m) {
            const auto* result = counted_method(line, "", measures[m]);
            const Amounts* amounts = result == nullptr ? nullptr : by_claim_ ? &result->part(i) : result;
            const std::optional<Estimate> amount =
                amounts == nullptr ? std::nullopt : amounts->of(measures[m]);
            if (amount)
                sum.add(m, line.load_number, *amount, line.share);
            else if (measures[m] == Measure::in_situ_m3)
                sum.unknown.insert(line.load_number);
        }
    }

    const Season& season_;
    const std::vector<GroupBy>& by_;
    bool by_claim_ = false;
    std::map<Keys, Sum, BlankLast> sums_;
};

/// The part of a line that stands under a key; blank measures are not known.
Amounts shared_amounts(const LedgerLine& line, std::optional<std::size_t> part) {
    Amounts amounts;
    const std::array into{&amounts.hopper_m3, &amounts.in_situ_m3, &amounts.wet_t, &amounts.dry_t};
    for (std::size_t m = 0; m < measures.size(); ++m) {
        const auto* result = counted_method(line, "", measures.at(m));
        if (result == nullptr) continue;
        const auto& amount = (part ? result->part(*part) : *result).of(measures.at(m));
        if (amount) *into.at(m) = *amount * line.share;
    }
    return amounts;
}

}  // namespace

std::string group_text(GroupBy by) {
    return names.at(static_cast<std::size_t>(by));
}

std::optional<GroupBy> group_named(const std::string& text) {
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (text == names[i]) return static_cast<GroupBy>(i);
    }
    return std::nullopt;
}

std::vector<VolumeLine> volume_lines(const Ledger& ledger, Instant as_at, GroupBy by,
                                     const std::optional<std::string>& key) {
    std::vector<VolumeLine> lines;
    for (const auto& line : ledger.released()) {
        if (line.at > as_at) break;
        const bool split = by == GroupBy::claim && line.figures != nullptr;
        const std::size_t parts = split ? line.figures->parts.size() : 1;
        for (std::size_t i = 0; i < parts; ++i) {
            const LoadPart* part = split ? &line.figures->parts[i] : nullptr;
            if (key_of(by, line, part, ledger.season()) != key) continue;
            lines.push_back({&line, shared_amounts(line, split ? std::optional(i) : std::nullopt)});
        }
    }
    return lines;
}

std::vector<VolumeRow> volumes(const Ledger& ledger, Instant as_at, const std::vector<GroupBy>& by,
                               std::optional<Period> period) {
    Grouping grouping(ledger.season(), by);
    for (const auto& line : ledger.released()) {
        if (line.at > as_at) break;
        if (!period || period->contains(line.at)) grouping.add(line);
    }
    return grouping.rows();
}

}  // namespace spoilbook
