// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/running.h"

#include <set>

namespace spoilbook {

namespace {

const Shift* newest_shift(const std::vector<Shift>& shifts, bool unended_only) {
    const Shift* found = nullptr;
    for (const auto& shift : shifts) {
        if (unended_only && shift.end) continue;
        if (found == nullptr || !(shift.start < found->start)) found = &shift;
    }
    return found;
}

/// The start of the shift before the newest: what began earlier and was never closed was forgotten.
std::optional<Instant> looked_back_to(const Season& season, const Shift* last) {
    std::optional<Instant> from;
    for (const auto& shift : season.shifts.rows()) {
        if (last != nullptr && shift.start < last->start && shift.start && (!from || *from < *shift.start))
            from = shift.start;
    }
    if (!from && last != nullptr) from = last->start;
    return from;
}

bool recent(const std::optional<Instant>& at, const std::optional<Instant>& from) {
    return !at || !from || *at >= *from;
}

void find_loads(const Season& season, const std::optional<Instant>& from, Running& found) {
    std::set<Id> gone;
    for (const auto& trip : season.trips.rows()) {
        // A barge that came back loaded still holds her load: it may be cast off again.
        const bool back_with_it = trip.outcome == "returned_loaded" && trip.returned;
        if (back_with_it)
            gone.erase(trip.load);
        else if (trip.departed || trip.release_start || trip.returned)
            gone.insert(trip.load);
    }
    for (const auto& load : season.loads.rows()) {
        if (gone.contains(load.id) || !load.rejected.empty()) continue;
        if (!recent(load.loading_end ? load.loading_end : load.loading_start, from)) continue;
        if (load.loading_end && found.to_send == nullptr) found.to_send = &load;
        found.load = &load;
    }
    if (found.to_send == nullptr) found.to_send = found.load;
}

}  // namespace

Running running(const Season& season) {
    Running found;
    found.shift = newest_shift(season.shifts.rows(), true);
    found.last = newest_shift(season.shifts.rows(), false);
    // An open shift that a newer one followed was left open; the newer one is what runs, or ran.
    if (found.shift != nullptr && found.shift->start < found.last->start && found.last->end)
        found.shift = nullptr;
    const auto from = looked_back_to(season, found.last);
    for (const auto& station : season.stations.rows()) {
        if (station.spuds_down && !station.spuds_up && recent(station.spuds_down, from))
            found.station = &station;
    }
    find_loads(season, from, found);
    for (const auto& trip : season.trips.rows()) {
        if (trip.departed && !trip.returned && recent(trip.departed, from) && found.trip == nullptr)
            found.trip = &trip;
    }
    for (const auto& delay : season.delays.rows()) {
        if (found.shift != nullptr && delay.shift == found.shift->id && delay.start && !delay.end)
            found.delay = &delay;
    }
    return found;
}

std::vector<const Release*> release_rows(const Season& season, const Trip& trip) {
    std::vector<const Release*> rows;
    for (const auto& release : season.releases.rows()) {
        if (release.trip == trip.id) rows.push_back(&release);
    }
    return rows;
}

double buckets_in(const Season& season, const Load& load) {
    double buckets = 0;
    for (const auto& tally : season.tallies.rows()) {
        if (tally.load == load.id) buckets += tally.count.value_or(0) + tally.part_buckets.value_or(0);
    }
    return buckets;
}

}  // namespace spoilbook
