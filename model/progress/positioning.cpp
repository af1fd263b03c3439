// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/positioning.h"

#include <algorithm>

#include "model/turbidity/sample_quantile.h"

namespace spoilbook {

namespace {

constexpr const char* own_cause = "shifting station";

/// Minutes of delays of other causes within `time`.
double delayed_minutes(const ShiftHours& hours_of, const Period& time) {
    std::int64_t ms = 0;
    for (const auto& span : hours_of.delays) {
        const Period common{std::max(span.time.from, time.from), std::min(span.time.to, time.to)};
        if (span.delay->cause != own_cause && common.from < common.to) ms += common.to - common.from;
    }
    return static_cast<double>(ms) / static_cast<double>(ms_per_minute);
}

/// The shift of the dredger that both ends of a step lie in; null where there is none.
const ShiftHours* shift_with(const std::vector<const ShiftHours*>& shifts, const Period& time) {
    auto after = std::upper_bound(shifts.begin(), shifts.end(), time.from,
                                  [](Instant at, const ShiftHours* shift) { return at < shift->time.from; });
    if (after == shifts.begin()) return nullptr;
    const ShiftHours* shift = *std::prev(after);
    return time.to <= shift->time.to ? shift : nullptr;
}

}  // namespace

std::vector<Positioning> positionings(const Season& season, const SeasonHours& hours) {
    std::unordered_map<Id, std::vector<const ShiftHours*>> shifts;
    for (const auto& shift : hours.shifts)
        shifts[shift.shift->dredger].push_back(&shift);
    std::unordered_map<Id, std::vector<const Station*>> stations;
    for (const auto& station : season.stations.rows()) {
        const Shift* shift = season.shifts.find(station.shift);
        if (shift != nullptr && station.spuds_down) stations[shift->dredger].push_back(&station);
    }
    std::vector<Positioning> steps;
    for (auto& [dredger, list] : stations) {
        std::stable_sort(list.begin(), list.end(),
                         [](const Station* a, const Station* b) { return *a->spuds_down < *b->spuds_down; });
        for (std::size_t i = 1; i < list.size(); ++i) {
            const Station& before = *list[i - 1];
            if (!before.spuds_up || *list[i]->spuds_down < *before.spuds_up) continue;
            const Period time{*before.spuds_up, *list[i]->spuds_down};
            const ShiftHours* shift = shift_with(shifts[dredger], time);
            if (shift == nullptr) continue;
            const double delayed = delayed_minutes(*shift, time);
            const auto whole = static_cast<double>(time.to - time.from) / static_cast<double>(ms_per_minute);
            steps.push_back({&before, list[i], shift->shift, time, whole - delayed, delayed});
        }
    }
    std::stable_sort(steps.begin(), steps.end(),
                     [](const Positioning& a, const Positioning& b) { return a.time < b.time; });
    return steps;
}

std::optional<Spread> spread_of(const std::vector<double>& numbers) {
    if (numbers.empty()) return std::nullopt;
    const auto at = [&](double p) { return sample_quantile(numbers, p, 7); };
    return Spread{numbers.size(), at(0.1), at(0.5), at(0.9)};
}

std::optional<Spread> spread_of(const std::vector<Positioning>& steps) {
    std::vector<double> minutes;
    for (const auto& step : steps)
        minutes.push_back(step.minutes);
    return spread_of(minutes);
}

}  // namespace spoilbook
