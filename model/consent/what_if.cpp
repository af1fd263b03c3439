// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/what_if.h"

#include <algorithm>
#include <map>
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

/// A rest of less than this of a load is the rounding of its shares.
constexpr double all_gone = 1e-9;

/// When a load was put ashore: the end of its trip, as far as that is recorded.
bool landed_by(const Trip& trip, Instant at) {
    if (trip.outcome != "landed") return false;
    const auto when = trip.returned ? trip.returned : trip.departed;
    return !when || *when <= at;
}

/// Which loads of which a part was released are under way with the rest.
class UnderWay {
 public:
    UnderWay(const Ledger& done, Instant at) : season_(done.season()), at_(at) {
        for (const auto& release : done.all_releases()) {
            if (!release.counts || !release.ended) continue;
            Instant& last = last_release_of_.try_emplace(release.trip, *release.ended).first->second;
            last = std::max(last, *release.ended);
        }
    }

    /// In a trip that departed by then, has not returned and was not landed. Where no return is recorded it
    /// is over once its last release has gone and the barge has begun another load.
    [[nodiscard]] bool is(const Load& load) const {
        const auto& trips = season_.trips.rows();
        return std::any_of(trips.begin(), trips.end(), [&](const Trip& trip) {
            return trip.load == load.id && trip.departed && *trip.departed <= at_ && is_out(trip, load);
        });
    }

 private:
    [[nodiscard]] bool is_out(const Trip& trip, const Load& load) const {
        if (landed_by(trip, at_) || (trip.returned && *trip.returned <= at_)) return false;
        const auto last = last_release_of_.find(&trip);
        const bool is_yet_to_release = last != last_release_of_.end() && at_ < last->second;
        return trip.returned || is_yet_to_release || !loads_again(load, *trip.departed);
    }

    [[nodiscard]] bool loads_again(const Load& load, Instant since) const {
        const auto& loads = season_.loads.rows();
        return std::any_of(loads.begin(), loads.end(), [&](const Load& other) {
            const auto begun = other.loading_start ? other.loading_start : other.loading_end;
            return load.barge && other.barge == load.barge && other.id != load.id && begun &&
                   since < *begun && *begun <= at_;
        });
    }

    const Season& season_;
    Instant at_;
    std::unordered_map<const Trip*, Instant> last_release_of_;
};

/// Loads under way or waiting full at the planned instant, but for the planned one and those landed, and what
/// share of each has not been released by then.
std::map<Id, double> waiting_at(const Ledger& done, const PlannedRelease& planned) {
    const Season& season = done.season();
    std::vector<double> gone(season.loads.size());
    std::vector<bool> begun(season.loads.size());
    for (const auto& line : done.released()) {
        if (line.load == nullptr || line.at > planned.at) continue;
        gone[line.load_number] += line.share;
        begun[line.load_number] = true;
    }
    std::optional<UnderWay> under_way;
    std::map<Id, double> waiting;
    for (const auto& line : done.dredged()) {
        const Load& load = *line.load;
        if (line.at > planned.at || !load.rejected.empty() || load.id == planned.load) continue;
        const double rest = 1 - gone[line.load_number];
        if (begun[line.load_number] && rest <= all_gone) continue;
        if (begun[line.load_number] && !under_way) under_way.emplace(done, planned.at);
        if (!begun[line.load_number] || under_way->is(load)) waiting.emplace(load.id, rest);
    }
    if (waiting.empty()) return waiting;
    for (const auto& trip : season.trips.rows()) {
        const auto one = waiting.find(trip.load);
        if (one != waiting.end() && one->second >= 1 && landed_by(trip, planned.at)) waiting.erase(one);
    }
    return waiting;
}

/// The one release of a trip that takes a share of its load alone.
Release rest_released(const Trip& trip, double share) {
    Release release;
    release.id = trip.id;  // in another shelf than the trip
    release.trip = trip.id;
    release.doors_open = release.empty = trip.release_end;
    release.ground = trip.ground;
    release.cell = trip.cell;
    release.share = share;
    return release;
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
    for (const auto& trip : would_be.instead()) {
        if (!would_be.rest_of(trip.load)) theirs.insert(trip.load);
    }
    for (const auto& trip : season.trips.rows()) {
        if (!theirs.contains(trip.load)) add(trip);
    }
    done.releases = {};
    for (const auto& release : would_be.all_releases()) {
        if (release.row == nullptr || (release.ended && at < *release.ended)) continue;
        Release kept = *release.row;
        kept.share = release.share;  // a blank one is not to take what those left out would have
        done.releases.add(std::move(kept));
    }
    for (const auto& trip : would_be.instead()) {
        add(trip);
        if (const auto rest = would_be.rest_of(trip.load)) done.releases.add(rest_released(trip, *rest));
    }
    return done;
}

WhatIf trips_with(const Ledger& done, const PlannedRelease& planned) {
    const Season& season = done.season();
    const auto waiting = waiting_at(done, planned);
    std::unordered_map<Id, const Trip*> last_trip_of;
    for (const auto& trip : season.trips.rows()) {
        if (trip.load == planned.load || waiting.contains(trip.load)) last_trip_of[trip.load] = &trip;
    }
    WhatIf with;
    auto& trips = with.trips;
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
    for (const auto& [load, rest] : waiting) {
        if (rest < 1) with.rest_of.emplace(load, rest);
        const auto logged = last_trip_of.find(load);
        const bool has_trip = logged != last_trip_of.end();
        put(load, has_trip ? logged->second->ground : Id{}, has_trip ? logged->second->cell : Id{});
    }
    return with;
}

Ledger ledger_with(const Ledger& done, const PlannedRelease& planned, std::optional<LoadFigures> figures) {
    auto with = trips_with(done, planned);
    return {done, std::move(with.trips), std::move(figures), std::move(with.rest_of)};
}

}  // namespace spoilbook
