// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/load_index.h"

#include <algorithm>

#include "model/unit/time_text.h"

namespace spoilbook {
namespace {

constexpr double usual_sea_water_t_m3 = 1.025;

}  // namespace

LoadIndex::LoadIndex(const Season& season, Sources& sources, std::optional<Instant> accepted_by)
    : season_(&season),
      factors_(season, sources, accepted_by),
      water_density_t_m3_(season.harbour.water_density_t_m3.value_or(usual_sea_water_t_m3)) {
    index_tallies();
    index_light_readings(sources);
    index_barges();
}

void LoadIndex::index_tallies() {
    tallies_.reserve(season_->tallies.size());
    for (const Tally& tally : season_->tallies.rows())
        tallies_.push_back(&tally);
    const auto earlier = [](const Tally* a, const Tally* b) { return a->load < b->load; };
    // Buckets are mostly counted load after load, and a load's number grows with its time.
    if (!std::is_sorted(tallies_.begin(), tallies_.end(), earlier))
        std::stable_sort(tallies_.begin(), tallies_.end(), earlier);
    tallies_of_.reserve(season_->loads.size());
    for (std::size_t i = 0; i < tallies_.size(); ++i) {
        Span& span = tallies_of_[tallies_[i]->load];
        if (span.count == 0) span.first = i;
        ++span.count;
    }
}

void LoadIndex::index_light_readings(Sources& sources) {
    for (const LightReading& reading : season_->light_readings.rows()) {
        if (!reading.time || reading.draughts_m.empty()) continue;
        light_readings_[reading.barge].push_back(&reading);
        const Barge* barge = season_->barges.find(reading.barge);
        const std::string name = "light draughts of " + (barge == nullptr ? "a barge" : barge->name) +
                                 " read " + instant_text(*reading.time, season_->zone);
        light_sources_.emplace(reading.id, sources.of(name));
    }
    for (auto& [barge, readings] : light_readings_) {
        std::stable_sort(readings.begin(), readings.end(),
                         [](const LightReading* a, const LightReading* b) { return *a->time < *b->time; });
    }
}

void LoadIndex::index_barges() {
    for (const Barge& barge : season_->barges.rows()) {
        const Table& hydrostatic = barge.hydrostatic_table;
        tables_.emplace(barge.id, BargeTables{LinearTable(barge.ullage_table), LinearTable(hydrostatic, 1),
                                              LinearTable(hydrostatic, 2), LinearTable(hydrostatic, 3),
                                              LinearTable(hydrostatic, 4)});
    }
}

std::span<const Tally* const> LoadIndex::tallies_of(const Id& load) const {
    const auto found = tallies_of_.find(load);
    if (load.is_nil() || found == tallies_of_.end()) return {};
    return {tallies_.data() + found->second.first, found->second.count};
}

const LightReading* LoadIndex::light_reading(const Id& barge, Instant at) const {
    const auto found = light_readings_.find(barge);
    if (barge.is_nil() || found == light_readings_.end()) return nullptr;
    const auto& readings = found->second;
    const auto after = std::upper_bound(readings.begin(), readings.end(), at,
                                        [](Instant t, const LightReading* r) { return t < *r->time; });
    return after == readings.begin() ? nullptr : *(after - 1);
}

SourceId LoadIndex::source_of(const LightReading& reading) const {
    return light_sources_.at(reading.id);
}

const BargeTables* LoadIndex::tables_of(const Id& barge) const {
    const auto found = tables_.find(barge);
    return found == tables_.end() ? nullptr : &found->second;
}

}  // namespace spoilbook
