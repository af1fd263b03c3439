// SPDX-License-Identifier: GPL-3.0-or-later
// The first instant over a limit, found in one walk, held against summing every window at every release.
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include "tests/property/consent_seasons.h"

using namespace spoilbook;

namespace {

using namespace seasons;

/// Every release time, every window, every release in it: no memory of the window before.
std::optional<Instant> brute_force(const std::vector<Put>& puts, int cell, const WindowRule& rule,
                                   const Season& season, double limit, Instant as_at) {
    std::optional<Instant> first;
    const double years = rule.kind == WindowKind::mean ? rule.n : 1;
    for (const auto& judged : puts) {
        if (judged.at > as_at) continue;
        const auto window = *window_at(rule, {}, season, judged.at);
        double sum = 0;
        for (const auto& put : puts)
            sum += put.cell == cell && window.counts(put.at, judged.at) ? put.m3 : 0;
        const bool over = sum / years > limit * (1 + 1e-9);
        if (over && (!first || judged.at < *first)) first = judged.at;
    }
    return first;
}

}  // namespace

TEST_CASE("no release in any window is forgotten, whatever the months clamp and the clocks do", "[window]") {
    CHECK(rc::check([] {
        SmallSeason small;
        small.season.zone = *Zone::named(
            *rc::gen::element<std::string>("Pacific/Auckland", "Europe/Berlin", "America/Santiago", "UTC"));
        Ground ground;
        ground.id = small.id();
        ground.ground = "G";
        small.season.grounds.add(ground);
        std::vector<Id> cells;
        for (int i = 0; i < cell_count; ++i) {
            Cell cell;
            cell.id = small.id();
            cell.cell = "C" + std::to_string(i);
            cell.ground = ground.id;
            small.season.cells.add(cell);
            cells.push_back(cell.id);
        }
        const auto place = *rc::gen::inRange<std::size_t>(0, 4);
        const auto puts = any_season(small.season.zone, place);
        for (const auto& put : puts)
            small.released_at(put.at, put.m3,
                              put.cell < 0 ? Id{} : cells[static_cast<std::size_t>(put.cell)]);
        const auto rule = any_rule();
        for (int limit = 25; limit <= 200; limit += 25)  // one of them is passed by whatever is forgotten
            small.condition(std::to_string(limit).c_str(),
                            (R"({"measure":"in_situ_m3","each_of":"cell","value":)" + std::to_string(limit) +
                             R"(,"window":)" + window_json(rule) + "}")
                                .c_str());
        const Instant as_at =
            *rc::gen::element(small.at("2026-01-01T00:00"), any_instant(small.season.zone, place));
        const Ledger ledger(small.season);
        for (const auto& state : limits_at(ledger, as_at)) {
            int cell = -1;
            for (int i = 0; i < cell_count; ++i) {
                if (state.member->id == cells[static_cast<std::size_t>(i)]) cell = i;
            }
            RC_ASSERT(state.first_over == brute_force(puts, cell, rule, small.season, *state.limit, as_at));
        }
    }));
}
