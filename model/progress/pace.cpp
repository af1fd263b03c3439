// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/pace.h"

#include <algorithm>
#include <set>
#include <string>
#include <unordered_set>

namespace spoilbook {

namespace {

double minutes(std::int64_t ms) {
    return static_cast<double>(ms) / static_cast<double>(ms_per_minute);
}

/// Minutes of `time` in this shift, without delays other than the work's own.
double worked_minutes(const ShiftHours& shift, const Period& time, const char* own_cause) {
    const Period cut{std::max(time.from, shift.time.from), std::min(time.to, shift.time.to)};
    if (cut.from >= cut.to) return 0;
    std::int64_t ms = cut.to - cut.from;
    for (const auto& span : shift.delays) {
        const Period common{std::max(span.time.from, cut.from), std::min(span.time.to, cut.to)};
        if (span.delay->cause != own_cause && common.from < common.to) ms -= common.to - common.from;
    }
    return minutes(ms);
}

std::vector<const Load*> newest_loads(const Season& season, Instant as_at) {
    std::vector<const Load*> loads;
    for (const auto& load : season.loads.rows()) {
        const bool is_whole =
            load.loading_start && load.loading_end && *load.loading_start < *load.loading_end;
        if (is_whole && *load.loading_end <= as_at) loads.push_back(&load);
    }
    std::stable_sort(loads.begin(), loads.end(),
                     [](const Load* a, const Load* b) { return *a->loading_end < *b->loading_end; });
    if (loads.size() > pace_of_newest)
        loads.erase(loads.begin(), loads.end() - static_cast<std::ptrdiff_t>(pace_of_newest));
    return loads;
}

void take_fills(Pace& pace, const std::vector<const Load*>& loads, const SeasonHours& hours_of) {
    std::vector<double> fills;
    std::vector<double> changes;
    double shift_h = 0;
    for (const auto& shift : hours_of.shifts) {
        const bool has_load = std::any_of(loads.begin(), loads.end(), [&](const Load* load) {
            return *load->loading_start < shift.time.to && shift.time.from < *load->loading_end;
        });
        if (has_load) shift_h += shift.shift_h();
    }
    for (std::size_t i = 0; i < loads.size(); ++i) {
        double fill = 0;
        for (const auto& shift : hours_of.shifts) {
            fill +=
                worked_minutes(shift, {*loads[i]->loading_start, *loads[i]->loading_end}, "shifting station");
            if (i == 0) continue;
            const Period change{*loads[i - 1]->loading_end, *loads[i]->loading_start};
            if (change.from >= shift.time.from && change.from <= change.to && change.to <= shift.time.to)
                changes.push_back(worked_minutes(shift, change, "barge change"));
        }
        if (fill > 0) fills.push_back(fill);
    }
    pace.fill = spread_of(fills);
    pace.change = spread_of(changes);
    if (shift_h > 0) pace.measured = static_cast<double>(loads.size()) / shift_h;
}

void take_trips(Pace& pace, const Season& season, const std::vector<const Load*>& loads, Instant as_at) {
    std::unordered_set<Id> asked;
    std::set<Id> barges;
    std::set<Id> tugs;
    for (const Load* load : loads) {
        asked.insert(load->id);
        if (load->barge != Id{}) barges.insert(load->barge);
    }
    std::vector<double> round_trips;
    for (const auto& trip : season.trips.rows()) {
        if (!asked.contains(trip.load)) continue;
        if (trip.tug != Id{}) tugs.insert(trip.tug);
        if (trip.departed && trip.returned && *trip.departed < *trip.returned && *trip.returned <= as_at)
            round_trips.push_back(minutes(*trip.returned - *trip.departed));
    }
    pace.round_trip = spread_of(round_trips);
    pace.tugs = tugs.size();
    pace.barges = barges.size();
}

}  // namespace

std::string text(Governs governs) {
    if (governs == Governs::dredger) return "dredger";
    return governs == Governs::tugs ? "tugs" : "barges";
}

std::optional<double> Pace::least() const {
    if (!by_dredger || !by_tugs || !by_barges) return std::nullopt;
    return std::min({*by_dredger, *by_tugs, *by_barges});
}

std::optional<Governs> Pace::governs() const {
    const auto least_of = least();
    if (!least_of) return std::nullopt;
    if (*by_dredger <= *least_of) return Governs::dredger;
    return *by_tugs <= *least_of ? Governs::tugs : Governs::barges;
}

void allow(Pace& pace, double fill_min, double change_min, double round_trip_min) {
    pace.by_dredger = 60 / (fill_min + change_min);
    if (pace.tugs > 0) pace.by_tugs = static_cast<double>(pace.tugs) * 60 / round_trip_min;
    if (pace.barges > 0)
        pace.by_barges = static_cast<double>(pace.barges) * 60 / (fill_min + change_min + round_trip_min);
}

Pace pace(const Season& season, const SeasonHours& hours, Instant as_at) {
    Pace found;
    const auto loads = newest_loads(season, as_at);
    found.loads = loads.size();
    take_fills(found, loads, hours);
    take_trips(found, season, loads, as_at);
    if (found.fill && found.change && found.round_trip)
        allow(found, found.fill->median, found.change->median, found.round_trip->median);
    return found;
}

}  // namespace spoilbook
