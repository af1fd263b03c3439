// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/return/schedule.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

namespace spoilbook {

namespace {

/// Rows carry the millisecond at which they came in the first six bytes of their id (RFC 9562).
std::int64_t entered_ms(const Id& id) {
    std::int64_t ms = 0;
    for (std::size_t i = 0; i < 6; ++i)
        ms = (ms << 8) | id.bytes[i];
    return ms;
}

template <class R>
std::string label(const Shelf<R>& shelf, const Id& id, std::string R::*member) {
    const R* row = shelf.find(id);
    return row == nullptr ? "" : row->*member;
}

void fill_names(const Season& season, const ReleaseView& release, ScheduleLine& line) {
    line.tug = label(season.tugs, release.trip->tug, &Tug::name);
    line.ground = label(season.grounds, line.place.ground, &Ground::ground);
    line.cell = label(season.cells, line.place.cell, &Cell::cell);
    if (release.load == nullptr) return;
    line.barge = label(season.barges, release.load->barge, &Barge::name);
    line.material = label(season.materials, release.load->material, &Material::material);
}

void split_by_claim(const Season& season, const LoadFigures& figures, ScheduleLine& line) {
    std::vector<std::pair<std::string, double>>
        weights;  // in the order in which the claims stand in the load
    for (const auto& part : figures.parts) {
        const auto claim = label(season.claims, part.claim, &Claim::claim);
        const double weight = part.in_situ_share.value_or(part.hopper_share);
        const auto same = std::find_if(weights.begin(), weights.end(),
                                       [&](const auto& known) { return known.first == claim; });
        if (same != weights.end())
            same->second += weight;
        else
            weights.emplace_back(claim, weight);
    }
    for (const auto& [claim, weight] : weights) {
        if (!claim.empty()) line.claims += (line.claims.empty() ? "" : ", ") + claim;
    }
    if (!line.in_situ_m3) return;
    std::vector<double> parts;
    for (const auto& [claim, weight] : weights)
        parts.push_back(weight);
    const auto shares = shared_out(*line.in_situ_m3, parts);
    for (std::size_t i = 0; i < weights.size(); ++i)
        line.in_situ_by_claim.emplace_back(weights[i].first, shares[i]);
}

void fill_volume(const Season& season, const LedgerLine& ledger_line, ScheduleLine& line) {
    if (ledger_line.figures == nullptr) return;
    const auto* hopper = counted_method(ledger_line, "", Measure::hopper_m3);
    const auto* in_situ = counted_method(ledger_line, "", Measure::in_situ_m3);
    if (hopper != nullptr) line.hopper_m3 = tenths_of(hopper->hopper_m3->value * ledger_line.share);
    if (in_situ != nullptr) {
        line.in_situ_m3 = tenths_of(in_situ->in_situ_m3->value * ledger_line.share);
        line.method = method_name(in_situ->method);
    }
    split_by_claim(season, *ledger_line.figures, line);
}

}  // namespace

Tenths tenths_of(double value) {
    return {std::llround(value * 10)};
}

std::vector<Tenths> shared_out(Tenths whole, const std::vector<double>& parts) {
    const double sum = std::accumulate(parts.begin(), parts.end(), 0.0);
    std::vector<Tenths> shares;
    std::vector<std::pair<double, std::size_t>> lost;
    std::int64_t given = 0;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const double exact = sum > 0 ? static_cast<double>(whole.tenths) * parts[i] / sum : 0;
        shares.push_back({static_cast<std::int64_t>(std::floor(exact))});
        given += shares.back().tenths;
        lost.emplace_back(exact - std::floor(exact), i);
    }
    std::stable_sort(lost.begin(), lost.end(),
                     [](const auto& a, const auto& b) { return a.first > b.first; });
    for (std::size_t i = 0; given < whole.tenths && !lost.empty(); ++i, ++given)
        ++shares[lost[i % lost.size()].second].tenths;
    return shares;
}

std::vector<ScheduleLine> schedule_of(const Ledger& ledger, const Period& period, Instant as_at,
                                      const std::set<std::int64_t>& import_stamps_ms, TripTracks* tracks) {
    const Season& season = ledger.season();
    std::unordered_map<const ReleaseView*, ReleasePlace> places;
    for (auto& place : release_places(ledger, as_at, tracks))
        places.emplace(place.release, place);
    std::vector<ScheduleLine> schedule;
    for (const auto& ledger_line : ledger.released()) {
        if (!period.contains(ledger_line.at) || ledger_line.at > as_at) continue;
        ScheduleLine line;
        line.release = ledger_line.release;
        line.place = places.at(ledger_line.release);
        fill_names(season, *ledger_line.release, line);
        fill_volume(season, ledger_line, line);
        const Id& row = line.release->row != nullptr ? line.release->row->id : line.release->trip->id;
        line.entered_ms = entered_ms(row);
        line.imported = import_stamps_ms.contains(line.entered_ms);
        line.late = !line.imported && line.entered_ms - ledger_line.at.utc_ms > ms_per_day;
        schedule.push_back(std::move(line));
    }
    return schedule;
}

}  // namespace spoilbook
