// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/ledger.h"

#include <algorithm>

namespace spoilbook {

namespace {

std::optional<double> hours_between(std::optional<Instant> from, std::optional<Instant> to) {
    if (!from || !to) return std::nullopt;
    return static_cast<double>(*to - *from) / static_cast<double>(ms_per_hour);
}

void sort_by_time(std::vector<LedgerLine>& lines) {
    std::stable_sort(lines.begin(), lines.end(),
                     [](const LedgerLine& a, const LedgerLine& b) { return a.at < b.at; });
}

}  // namespace

Ledger::Ledger(const Season& season)
    : season_(season), index_(season, sources_), grounds_(season), releases_(releases_of(season)) {
    value_loads();
    list_released();
    list_dredged();
}

void Ledger::value_loads() {
    figures_.reserve(season_.loads.size());
    load_numbers_.reserve(season_.loads.size());
    for (const auto& load : season_.loads.rows()) {
        load_numbers_.emplace(load.id, figures_.size());
        figures_.push_back(figures(index_, load));
    }
}

const LoadFigures* Ledger::figures_of(const Id& load) const {
    const auto place = load_numbers_.find(load);
    return place == load_numbers_.end() ? nullptr : &figures_[place->second];
}

std::span<const LedgerLine> Ledger::released_at(Instant at) const {
    const auto first = std::lower_bound(released_.begin(), released_.end(), at,
                                        [](const LedgerLine& line, Instant t) { return line.at < t; });
    const auto last = std::upper_bound(first, released_.end(), at,
                                       [](Instant t, const LedgerLine& line) { return t < line.at; });
    return {first, last};
}

void Ledger::list_released() {
    std::unordered_map<Id, std::uint32_t> trip_numbers;
    auto without_load = static_cast<std::uint32_t>(figures_.size());
    for (const auto& release : releases_) {
        const auto trip =
            trip_numbers.try_emplace(release.trip->id, static_cast<std::uint32_t>(trip_numbers.size()));
        if (!release.counts || !release.ended) continue;
        LedgerLine line;
        line.at = *release.ended;
        line.release = &release;
        line.load = release.load;
        line.figures = release.load != nullptr ? figures_of(release.load->id) : nullptr;
        line.load_number = release.load != nullptr
                               ? static_cast<std::uint32_t>(load_numbers_.at(release.load->id))
                               : without_load++;
        line.trip_number = trip.first->second;
        line.share = release.share;
        line.ground = release.ground;
        line.cell = release.cell ? release.cell : grounds_.cell_at(release);
        line.day = season_.zone.day_of(line.at);
        line.hours = hours_between(release.opened, release.shut);
        released_.push_back(line);
    }
    sort_by_time(released_);
}

void Ledger::list_dredged() {
    for (const auto& load : season_.loads.rows()) {
        if (!load.loading_end) continue;
        LedgerLine line;
        line.at = *load.loading_end;
        line.load = &load;
        line.load_number = static_cast<std::uint32_t>(load_numbers_.at(load.id));
        line.trip_number = line.load_number;
        line.figures = &figures_[line.load_number];
        line.day = season_.zone.day_of(line.at);
        line.hours = hours_between(load.loading_start, load.loading_end);
        dredged_.push_back(line);
    }
    sort_by_time(dredged_);
}

const MethodResult* counted_method(const LedgerLine& line, const std::string& method, Measure measure) {
    if (line.figures == nullptr) return nullptr;
    return line.figures->counted_by(method.empty() ? std::nullopt : method_named(method), measure);
}

std::optional<Estimate> dredged_amount(const LedgerLine& line, const std::string& method, Measure measure) {
    const auto* result = counted_method(line, method, measure);
    if (result == nullptr) return std::nullopt;
    if (result->dredged_by_part.empty()) return result->of(measure);
    std::optional<Estimate> sum;
    for (const auto& amounts : result->dredged_by_part) {
        const auto& amount = amounts.of(measure);
        if (!amount) return std::nullopt;
        sum = sum ? together(*sum, *amount) : *amount;
    }
    return sum;
}

}  // namespace spoilbook
