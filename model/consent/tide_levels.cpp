// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/tide_levels.h"

#include <algorithm>
#include <cmath>

namespace spoilbook {

TideLevels::TideLevels(const Shelf<Tide>& rows) {
    for (const auto& row : rows.rows()) {
        if (row.time && row.level_m) levels_.push_back({*row.time, *row.level_m});
    }
    std::ranges::stable_sort(levels_, {}, &Level::time);
    const auto same_time = [](const Level& a, const Level& b) { return a.time == b.time; };
    std::ranges::reverse(levels_);
    levels_.erase(std::unique(levels_.begin(), levels_.end(), same_time), levels_.end());
    std::ranges::reverse(levels_);
}

std::optional<double> TideLevels::at(Instant time) const {
    const auto after = std::ranges::lower_bound(levels_, time, {}, &Level::time);
    if (after == levels_.end()) return std::nullopt;
    if (after->time == time) return after->level_m;
    if (after == levels_.begin()) return std::nullopt;
    const Level& before = *std::prev(after);
    if (after->time - before.time > longest_gap_ms) return std::nullopt;
    const double share =
        static_cast<double>(time - before.time) / static_cast<double>(after->time - before.time);
    return before.level_m + share * (after->level_m - before.level_m);
}

std::vector<Instant> TideLevels::turns(Period span, const std::vector<double>& levels_m) const {
    std::vector<Instant> turns;
    auto row = std::ranges::lower_bound(levels_, span.from, {}, &Level::time);
    if (row != levels_.begin()) --row;
    for (; row != levels_.end() && row->time < span.to; ++row) {
        for (const std::int64_t ms : {-1, 0, 1})
            turns.push_back(row->time + ms);
        if (std::next(row) == levels_.end()) break;
        const Level& next = *std::next(row);
        for (const double level : levels_m) {
            const double share = (level - row->level_m) / (next.level_m - row->level_m);
            if (!(share > 0 && share < 1)) continue;
            const double ms = share * static_cast<double>(next.time - row->time);
            for (const std::int64_t nearby : {-1, 0, 1, 2})
                turns.push_back(row->time + (static_cast<std::int64_t>(std::floor(ms)) + nearby));
        }
    }
    std::erase_if(turns, [&](Instant turn) { return !span.contains(turn); });
    std::ranges::sort(turns);
    return turns;
}

}  // namespace spoilbook
