// SPDX-License-Identifier: GPL-3.0-or-later
// The first instant over a limit, found in one walk, held against summing every window at every release.
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include "tests/unit/consent/support.h"

using namespace spoilbook;

namespace {

struct Put {
    Instant at;
    int cell = -1;  ///< -1: none
    double m3 = 0;
};

constexpr int cell_count = 2;

/// Where rolling windows misbehave: the end of February and what comes a month or a year after it, and the
/// days of clock changes. A season keeps to one such place, so that windows overlap.
Instant any_instant(const Zone& zone, std::size_t place) {
    static const std::vector<std::vector<Day>> places{
        {{2023, 2, 28}, {2023, 3, 29}, {2023, 3, 30}, {2023, 3, 31}, {2023, 4, 30}},
        {{2023, 2, 27}, {2023, 2, 28}, {2024, 2, 28}, {2024, 2, 29}, {2025, 2, 28}, {2025, 3, 1}},
        {{2023, 4, 2}, {2023, 5, 2}, {2023, 9, 24}, {2023, 10, 24}, {2024, 4, 2}, {2024, 9, 24}},
        {{2024, 3, 31}, {2024, 4, 7}, {2024, 4, 30}, {2024, 5, 1}, {2024, 9, 29}, {2024, 10, 29}}};
    WallTime wall;
    wall.day = *rc::gen::elementOf(places[place]);
    wall.hour = *rc::gen::element(1, 2, 3, 4, 10);
    wall.minute = *rc::gen::element(0, 30);
    return zone.instant(wall) + *rc::gen::element<std::int64_t>(0, 0, 0, 1, ms_per_hour);
}

std::vector<Put> any_season(const Zone& zone, std::size_t place) {
    std::vector<Put> puts(*rc::gen::inRange<std::size_t>(2, 12));
    for (auto& put : puts) {
        put.at = any_instant(zone, place);
        put.cell = *rc::gen::inRange(-1, cell_count);
        put.m3 = *rc::gen::inRange(1, 5) * 25;
    }
    return puts;
}

WindowRule any_rule() {
    WindowRule rule;
    rule.kind = *rc::gen::element(WindowKind::rolling, WindowKind::rolling, WindowKind::rolling,
                                  WindowKind::calendar, WindowKind::mean);
    rule.unit = rule.kind == WindowKind::calendar
                    ? *rc::gen::element(WindowUnit::days, WindowUnit::months)
                    : *rc::gen::element(WindowUnit::months, WindowUnit::months, WindowUnit::days);
    rule.n = rule.kind == WindowKind::mean     ? *rc::gen::element(1, 2)
             : rule.unit == WindowUnit::months ? *rc::gen::element(1, 1, 12)
                                               : *rc::gen::element(1, 30);
    return rule;
}

std::string window_json(const WindowRule& rule) {
    const std::string unit = rule.unit == WindowUnit::months ? "month" : "day";
    if (rule.kind == WindowKind::mean) return R"({"kind":"mean","years":)" + std::to_string(rule.n) + "}";
    if (rule.kind == WindowKind::calendar) return R"({"kind":"calendar","unit":")" + unit + "\"}";
    return R"({"kind":"rolling","n":)" + std::to_string(rule.n) + R"(,"unit":")" + unit + "s\"}";
}

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
