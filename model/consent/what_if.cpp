// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/what_if.h"

#include <set>
#include <unordered_set>

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

/// Loads of which something was released by then, or which were landed.
std::unordered_set<Id> gone_by(const Season& season, Instant at) {
    std::unordered_set<Id> gone;
    for (const auto& release : releases_of(season)) {
        if (release.load != nullptr && release.counted_by(at)) gone.insert(release.load->id);
    }
    for (const auto& trip : season.trips.rows()) {
        if (landed_by(trip, at)) gone.insert(trip.load);
    }
    return gone;
}

Id only_ground(const Season& season) {
    return season.grounds.size() == 1 ? season.grounds.rows().front().id : Id{};
}

}  // namespace

PlannedRelease completed(const Season& season, PlannedRelease planned) {
    if (planned.ground) return planned;
    if (const Cell* cell = season.cells.find(planned.cell)) {
        planned.ground = cell->ground;
        return planned;
    }
    if (planned.lat && planned.lon) {
        const GroundMap map(season);
        for (const auto& ground : season.grounds.rows()) {
            const Area* area = map.open_ground(ground.id);
            const LonLat position{*planned.lat, *planned.lon};
            if (area != nullptr && contains(*area, map.crs()->project(position))) planned.ground = ground.id;
        }
    }
    if (!planned.ground) planned.ground = only_ground(season);
    return planned;
}

Season done_by(const Season& season, const PlannedRelease& planned) {
    const Instant at = planned.at;
    Season done = season;
    done.loads = {};
    for (const auto& load : season.loads.rows()) {
        if (load.id == planned.load || !load.loading_end || *load.loading_end <= at) done.loads.add(load);
    }
    done.trips = {};
    for (Trip trip : season.trips.rows()) {
        if (trip.release_end && *trip.release_end > at) trip.release_start = trip.release_end = std::nullopt;
        done.trips.add(trip);
    }
    done.releases = {};
    for (const auto& release : season.releases.rows()) {
        const auto end = release.empty ? release.empty : release.doors_shut;
        if (!end || *end <= at) done.releases.add(release);
    }
    return done;
}

WhatIf with_release(const Season& season, const PlannedRelease& planned) {
    WhatIf what_if{season, made_up_id(0)};
    const auto gone = gone_by(season, planned.at);
    std::set<Id> waiting;
    for (const auto& load : season.loads.rows()) {
        const bool full = load.loading_end && *load.loading_end <= planned.at && load.rejected.empty();
        if (full && load.id != planned.load && !gone.contains(load.id)) waiting.insert(load.id);
    }
    Shelf<Trip> trips;
    std::unordered_map<Id, Trip> last_trip_of;
    for (const auto& trip : season.trips.rows()) {
        if (trip.load != planned.load && !waiting.contains(trip.load))
            trips.add(trip);
        else
            last_trip_of[trip.load] = trip;
    }
    std::uint32_t n = 0;
    const auto put = [&](const Id& load, const Id& ground, const Id& cell) {
        Trip trip;
        const auto own = last_trip_of.find(load);
        if (own != last_trip_of.end()) trip.tug = own->second.tug;
        trip.id = made_up_id(n++);
        trip.load = load;
        trip.release_start = planned.at;
        trip.release_end = planned.at;
        trip.ground = ground ? ground : only_ground(season);
        trip.cell = cell;
        return trip;
    };
    Trip own = put(planned.load, planned.ground, planned.cell);
    own.lat = planned.lat;
    own.lon = planned.lon;
    trips.add(own);
    for (const auto& load : waiting) {
        const auto logged = last_trip_of.find(load);
        const bool has_trip = logged != last_trip_of.end();
        trips.add(put(load, has_trip ? logged->second.ground : Id{}, has_trip ? logged->second.cell : Id{}));
    }
    what_if.season.trips = std::move(trips);
    return what_if;
}

}  // namespace spoilbook
