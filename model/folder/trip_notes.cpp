// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <map>

#include "model/folder/season_view.h"

namespace spoilbook {

namespace {

/// The shift that each load was last dug in: of its tallies the one that ended last.
std::unordered_map<Id, const Shift*> shift_of_loads(const SeasonView& season) {
    std::unordered_map<Id, const Shift*> shifts;
    for (const auto& seen : season.tallies.all()) {
        Id id = seen.record.shift;
        if (const auto* station = season.stations.find(seen.record.station); !id && station != nullptr)
            id = station->record.shift;
        const auto* shift = season.shifts.find(id);
        if (shift == nullptr || !shift->record.end) continue;
        const Shift*& last = shifts[seen.record.load];
        if (last == nullptr || *last->end < *shift->record.end) last = &shift->record;
    }
    return shifts;
}

/// A shift that holds an instant; null where none does. `by_start` has the shifts that have both ends.
const Shift* shift_at(const std::multimap<Instant, const Shift*>& by_start, Instant at) {
    auto next = by_start.upper_bound(at);
    // Shifts of two dredgers run side by side: some back steps are enough to find one that holds it.
    for (int step = 0; step < 8 && next != by_start.begin(); ++step) {
        --next;
        if (at < *next->second->end) return next->second;
    }
    return nullptr;
}

void note_outlasting(const SeasonView& season, NoteDown& notes) {
    if (!season.trips.any_fresh()) return;
    const auto shift_of_load = shift_of_loads(season);
    std::multimap<Instant, const Shift*> by_start;
    for (const auto& seen : season.shifts.all()) {
        if (seen.record.start && seen.record.end) by_start.emplace(*seen.record.start, &seen.record);
    }
    for (const auto& seen : season.trips.all()) {
        const Trip& trip = seen.record;
        if (!seen.fresh() || !trip.departed || !trip.returned) continue;
        const auto known = shift_of_load.find(trip.load);
        const Shift* shift =
            known != shift_of_load.end() ? known->second : shift_at(by_start, *trip.departed);
        if (shift == nullptr || !(*trip.departed < *shift->end) || !(*shift->end < *trip.returned)) continue;
        notes.push_back({season.trips.place(seen),
                         fmt::format("trip {} outlasts shift {} by {} minutes", trip.trip, shift->shift,
                                     (*trip.returned - *shift->end) / ms_per_minute)});
    }
}

void note_shares(const SeasonView& season, NoteDown& notes) {
    std::unordered_map<Id, double> sums;
    std::unordered_map<Id, const Seen<Release>*> last_fresh;
    for (const auto& seen : season.releases.all()) {
        sums[seen.record.trip] += seen.record.share.value_or(0);
        if (seen.fresh()) last_fresh[seen.record.trip] = &seen;
    }
    for (const auto& seen : season.releases.all()) {
        const auto last = last_fresh.find(seen.record.trip);
        const bool here = last != last_fresh.end() && last->second == &seen;
        if (!here || sums[seen.record.trip] <= 1 + 1e-9) continue;
        const auto* trip = season.trips.find(seen.record.trip);
        notes.push_back({season.releases.place(seen),
                         fmt::format("the releases of trip {} have shares of {:.6g} in all, over 1",
                                     trip == nullptr ? "" : trip->record.trip, sums[seen.record.trip])});
    }
}

}  // namespace

void note_trips(const SeasonView& season, NoteDown& notes) {
    note_outlasting(season, notes);
    note_shares(season, notes);
}

}  // namespace spoilbook
