// SPDX-License-Identifier: GPL-3.0-or-later
// Random seasons about the places where rolling windows misbehave, for the properties of limits.
#pragma once

#include <rapidcheck.h>

#include "tests/unit/consent/support.h"

namespace spoilbook::seasons {

struct Put {
    Instant at;
    int cell = -1;  ///< -1: none
    double m3 = 0;
};

constexpr int cell_count = 2;

/// Where rolling windows misbehave: the end of February and what comes a month or a year after it, and the
/// days of clock changes. A season keeps to one such place, so that windows overlap.
inline Instant any_instant(const Zone& zone, std::size_t place) {
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

inline std::vector<Put> any_season(const Zone& zone, std::size_t place) {
    std::vector<Put> puts(*rc::gen::inRange<std::size_t>(2, 12));
    for (auto& put : puts) {
        put.at = any_instant(zone, place);
        put.cell = *rc::gen::inRange(-1, cell_count);
        put.m3 = *rc::gen::inRange(1, 5) * 25;
    }
    return puts;
}

inline WindowRule any_rule() {
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

inline std::string window_json(const WindowRule& rule) {
    const std::string unit = rule.unit == WindowUnit::months ? "month" : "day";
    if (rule.kind == WindowKind::mean) return R"({"kind":"mean","years":)" + std::to_string(rule.n) + "}";
    if (rule.kind == WindowKind::calendar) return R"({"kind":"calendar","unit":")" + unit + "\"}";
    return R"({"kind":"rolling","n":)" + std::to_string(rule.n) + R"(,"unit":")" + unit + "s\"}";
}

}  // namespace spoilbook::seasons
