// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>
#include <numeric>

#include "model/folder/season_view.h"

namespace spoilbook {

namespace {

/// A barge's ullage table by rising ullage; rows that are no pair left out.
Table rising(Table table) {
    std::erase_if(table, [](const auto& row) { return row.size() < 2; });
    std::sort(table.begin(), table.end());
    return table;
}

/// Hopper volume at an ullage, linear between rows; nothing outside the table.
std::optional<double> volume_at(const Table& table, double ullage_m) {
    for (std::size_t i = 1; i < table.size(); ++i) {
        const double low = table[i - 1][0];
        const double high = table[i][0];
        if (ullage_m < low || ullage_m > high) continue;
        const double share = high > low ? (ullage_m - low) / (high - low) : 0;
        return table[i - 1][1] + share * (table[i][1] - table[i - 1][1]);
    }
    return std::nullopt;
}

/// Σ n·C·f of each load; loads with a line whose bucket or fill factor is not known are left out.
std::unordered_map<Id, double> tally_volumes(const SeasonView& season) {
    std::unordered_map<Id, double> volumes;
    std::vector<Id> unknown;
    for (const auto& seen : season.tallies.all()) {
        const Tally& tally = seen.record;
        const auto* bucket = season.buckets.find(tally.bucket);
        const auto* load = season.loads.find(tally.load);
        if (load == nullptr) continue;
        Id material = tally.material ? tally.material : load->record.material;
        if (const auto* station = season.stations.find(tally.station); !material && station != nullptr) {
            const auto* claim = season.claims.find(station->record.claim);
            if (claim != nullptr) material = claim->record.material;
        }
        const auto* fill = season.materials.find(material);
        const bool known = bucket != nullptr && bucket->record.capacity_m3 && fill != nullptr &&
                           fill->record.fill_factor && tally.count;
        if (!known) {
            unknown.push_back(tally.load);
            continue;
        }
        volumes[tally.load] += (*tally.count + tally.part_buckets.value_or(0)) * *bucket->record.capacity_m3 *
                               *fill->record.fill_factor;
    }
    for (const Id& load : unknown)
        volumes.erase(load);
    return volumes;
}

class LoadNotes {
 public:
    LoadNotes(const SeasonView& season, NoteDown& notes)
        : season_(season), notes_(notes), by_tally_(tally_volumes(season)) {
        for (const auto& seen : season.barges.all())
            tables_.emplace(seen.record.id, rising(seen.record.ullage_table));
    }

    void look_at(const Seen<Load>& seen) {
        const Load& load = seen.record;
        const auto* barge = season_.barges.find(load.barge);
        if (barge == nullptr) return;
        compare(seen, barge->record, load.stated_hopper_m3, "as stated");
        const Table& table = tables_.at(load.barge);
        if (!load.dips_m.empty() && !table.empty()) look_at_dips(seen, barge->record, table);
        const auto tally = by_tally_.find(load.id);
        if (tally != by_tally_.end()) compare(seen, barge->record, tally->second, "by tally");
    }

 private:
    void look_at_dips(const Seen<Load>& seen, const Barge& barge, const Table& table) {
        const auto& dips = seen.record.dips_m;
        const auto [least, most] = std::minmax_element(dips.begin(), dips.end());
        if (*least < table.front()[0] || *most > table.back()[0]) {
            note(seen, fmt::format("load {} has dips outside the table of {} ({} to {} m)", seen.record.load,
                                   barge.name, table.front()[0], table.back()[0]));
        }
        const double mean = std::accumulate(dips.begin(), dips.end(), 0.0) / static_cast<double>(dips.size());
        compare(seen, barge, volume_at(table, mean), "by ullage");
    }

    void compare(const Seen<Load>& seen, const Barge& barge, std::optional<double> hopper_m3,
                 const char* how) {
        if (!hopper_m3 || !barge.capacity_m3) return;
        // What fills the barge to the last digit of a table is not over.
        if (*hopper_m3 <= *barge.capacity_m3 * (1 + 1e-9)) return;
        note(seen, fmt::format("load {} is over the capacity of {}: {:.1f} hopper m³ {}, {:.1f} hold",
                               seen.record.load, barge.name, *hopper_m3, how, *barge.capacity_m3));
    }

    void note(const Seen<Load>& seen, std::string what) {
        notes_.push_back({season_.loads.place(seen), std::move(what)});
    }

    const SeasonView& season_;
    NoteDown& notes_;
    std::unordered_map<Id, double> by_tally_;
    std::unordered_map<Id, Table> tables_;
};

}  // namespace

void note_loads(const SeasonView& season, NoteDown& notes) {
    if (!season.loads.any_fresh()) return;
    LoadNotes look(season, notes);
    for (const auto& seen : season.loads.all()) {
        if (seen.fresh()) look.look_at(seen);
    }
}

}  // namespace spoilbook
