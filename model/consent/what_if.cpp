// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/what_if.h"

#include <set>

#include "model/place/ground_map.h"
#include "model/record/release_view.h"

namespace spoilbook {

namespace {

/// Ids that no book gives: its own have a version in the seventh byte.
Id made_up_id(std::uint32_t n) {
    Id id;
    id.bytes[0] = 0xFF;
    for (std::size_t i = 0; i < 4; ++i)
        id.bytes[15 - i] = static_cast<std::uint8_t>(n >> (8 * i));
    return id;
}

/// When a load was put ashore: the end of its trip, as far as that is recorded.
bool landed_by(const Trip& trip, Instant at) {
    if (trip.outcome != "landed") return false;
    const auto when = trip.returned ? trip.returned : trip.departed;
    return !when || *when <= at;
}

/// Loads under way or waiting full at the planned instant, but for the planned one: nothing of them was
/// released by then, nor were they landed.
std::set<Id> waiting_at(const Ledger& done, const PlannedRelease& planned) {
    const Season& season = done.season();
    std::vector<bool> gone(season.loads.size());
    for (const auto& line : done.released()) {
        if (line.load != nullptr && line.at <= planned.at) gone[line.load_number] = true;
    }
    std::set<Id> waiting;
    for (const auto& line : done.dredged()) {
        const bool full = line.at <= planned.at && !gone[line.load_number] && line.load->rejected.empty();
        if (full && line.load->id != planned.load) waiting.insert(line.load->id);
    }
    if (waiting.empty()) return waiting;
    for (const auto& trip : season.trips.rows()) {
        if (landed_by(trip, planned.at)) waiting.erase(trip.load);
    }
    return waiting;
}

Id only_ground(const Season& season) {
    return season.grounds.size() == 1 ? season.grounds.rows().front().id : Id{};
}

}  // namespace

PlannedRelease completed(const Ledger& done, PlannedRelease planned) {
    if (planned.ground) return planned;
    const Season& season = done.season();
    const GroundMap& map = done.grounds();
    if (const Cell* cell = season.cells.find(planned.cell)) {
        planned.ground = cell->ground;
        return planned;
    }
    if (planned.lat && planned.lon) {
        for (const auto& ground : season.grounds.rows()) {
            const Area* area = map.open_ground(ground.id);
            const LonLat position{*planned.lat, *planned.lon};
            if (area != nullptr && contains(*area, map.crs()->project(position))) planned.ground = ground.id;
        }
    }
    if (!planned.ground) planned.ground = only_ground(season);
    return planned;
}

Season done_by(const Ledger& would_be, const PlannedRelease& planned) {
    const Instant at = planned.at;
    const Season& season = would_be.season();
    Season done = season;
    done.loads = {};
    for (const auto& load : season.loads.rows()) {
        if (load.id == planned.load || !load.loading_end || *load.loading_end <= at) done.loads.add(load);
    }
    done.trips = {};
    const auto add = [&](Trip trip) {
        if (trip.release_end && *trip.release_end > at) trip.release_start = trip.release_end = std::nullopt;
        done.trips.add(std::move(trip));
    };
    std::set<Id> theirs;
    for (const auto& trip : would_be.instead())
        theirs.insert(trip.load);
    for (const auto& trip : season.trips.rows()) {
        if (!theirs.contains(trip.load)) add(trip);
    }
    for (const auto& trip : would_be.instead())
        add(trip);
    done.releases = {};
    for (const auto& release : season.releases.rows()) {
        const auto end = release.empty ? release.empty : release.doors_shut;
        if (!end || *end <= at) done.releases.add(release);
    }
    return done;
}

std::vector<Trip> trips_with(const Ledger& done, const PlannedRelease& planned) {
    const Season& season = done.season();
    const auto waiting = waiting_at(done, planned);
    std::unordered_map<Id, const Trip*> last_trip_of;
    for (const auto& trip : season.trips.rows()) {
        if (trip.load == planned.load || waiting.contains(trip.load)) last_trip_of[trip.load] = &trip;
    }
    std::vector<Trip> trips;
    const auto put = [&](const Id& load, const Id& ground, const Id& cell) {
        Trip& trip = trips.emplace_back();
        const auto own = last_trip_of.find(load);
        if (own != last_trip_of.end()) trip.tug = own->second->tug;
        trip.id = made_up_id(static_cast<std::uint32_t>(trips.size() - 1));
        trip.load = load;
        trip.release_start = planned.at;
        trip.release_end = planned.at;
        trip.ground = ground ? ground : only_ground(season);
        trip.cell = cell;
    };
    put(planned.load, planned.ground, planned.cell);
    trips.front().lat = planned.lat;
    trips.front().lon = planned.lon;
    for (const auto& load : waiting) {
        const auto logged = last_trip_of.find(load);
        const bool has_trip = logged != last_trip_of.end();
        put(load, has_trip ? logged->second->ground : Id{}, has_trip ? logged->second->cell : Id{});
    }
    return trips;
}

}  // namespace spoilbook
