// SPDX-License-Identifier: GPL-3.0-or-later
// What happened in a small season, to say one thing at a time about what a condition says of it.
#pragma once

#include <deque>

#include "model/consent/findings.h"
#include "support.h"

namespace spoilbook {

/// One barge, sand and clay from claims Q1 and Q2, two grounds, and releases at times that a test says.
struct Past {
    SmallSeason small;
    Id sand, clay, deep, shallow;
    std::optional<Ledger> ledger;
    std::vector<Watch> watches;

    Past() {
        sand = small.named(small.season.materials, &Material::material, "sand");
        clay = small.named(small.season.materials, &Material::material, "clay");
        deep = small.named(small.season.grounds, &Ground::ground, "Deep Hole");
        shallow = small.named(small.season.grounds, &Ground::ground, "Bank");
    }
    Instant at(const char* text) const { return small.at(text); }

    /// A release of a load of sand in the deep hole; a blank time is not recorded.
    Trip& release(const char* opened, const char* ended) {
        Load load;
        load.id = small.id();
        load.load = "L";
        load.material = sand;
        loads.push_back(load);
        Trip trip;
        trip.id = small.id();
        trip.trip = "T-" + std::to_string(trips.size() + 1);
        trip.load = load.id;
        trip.ground = deep;
        if (*opened != 0) trip.release_start = at(opened);
        if (*ended != 0) trip.release_end = at(ended);
        trips.push_back(trip);
        return trips.back();
    }
    void seen(const char* when, std::optional<double> wave_m, std::optional<double> wind_kn = {},
              const char* place = "") {
        Observation row;
        row.id = small.id();
        row.time = at(when);
        row.wave_height_m = wave_m;
        row.wind_kn = wind_kn;
        row.place = place;
        small.season.observations.add(row);
    }
    Watch& watch(const Trip& trip, const char* start, const char* end) {
        Watch row;
        row.id = small.id();
        row.trip = trip.id;
        row.start = at(start);
        if (*end != 0) row.end = at(end);
        watches.push_back(row);
        return watches.back();
    }
    const Condition& condition(const char* kind, const char* body) { return small.condition_of(kind, body); }
    const Ledger& book() {
        if (!ledger) {
            for (const auto& load : loads)
                small.season.loads.add(load);
            for (const auto& trip : trips)
                small.season.trips.add(trip);
            ledger.emplace(small.season);
        }
        return *ledger;
    }
    JudgedSpan all() const { return {at("2026-12-31T00:00"), std::nullopt}; }

    std::vector<Load> loads;
    std::deque<Trip> trips;
};

inline std::vector<Compliance> states(const std::vector<Finding>& findings) {
    std::vector<Compliance> all;
    for (const auto& found : findings)
        all.push_back(found.state);
    return all;
}

using States = std::vector<Compliance>;
constexpr auto complied = Compliance::complied;
constexpr auto breached = Compliance::breached;
constexpr auto untold = Compliance::cannot_tell;

/// One row of a kind, with only these columns filled.
using HeldRow = std::pair<const Id, std::vector<bool>>;

template <class R>
HeldRow row_with(const Id& id, const std::vector<std::string>& filled) {
    const Kind& kind = definition<R>().kind();
    std::vector<bool> held(kind.fields.size());
    for (const auto& column : filled)
        held[*kind.index_of(column)] = true;
    return {id, held};
}

template <class R>
HeldColumns held(std::initializer_list<HeldRow> rows) {
    return {definition<R>().kind(), rows};
}

}  // namespace spoilbook
