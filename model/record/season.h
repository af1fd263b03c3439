// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <unordered_map>

#include "model/record/records.h"
#include "model/unit/zone.h"

namespace spoilbook {

/// Rows of one kind, found by their id.
template <class R>
class Shelf {
 public:
    void add(R record) {
        places_.emplace(record.id, rows_.size());
        rows_.push_back(std::move(record));
    }
    void reserve(std::size_t n) {
        rows_.reserve(n);
        places_.reserve(n);
    }
    [[nodiscard]] const std::vector<R>& rows() const { return rows_; }
    /// Null where there is no such row (also for a blank reference).
    [[nodiscard]] const R* find(const Id& id) const {
        const auto place = places_.find(id);
        return place == places_.end() ? nullptr : &rows_[place->second];
    }
    [[nodiscard]] std::size_t size() const { return rows_.size(); }

 private:
    std::vector<R> rows_;
    std::unordered_map<Id, std::size_t> places_;
};

/// What a book knows, as plain values: the input of every calculation. Struck-out rows are not in it.
/// Nothing here is cut by time: calculations take `as_at`.
struct Season {
    Harbour harbour;
    Zone zone = Zone::utc();
    Shelf<Person> people;
    Shelf<Material> materials;
    Shelf<Factor> factors;
    Shelf<Suitability> suitabilities;
    Shelf<Dredger> dredgers;
    Shelf<Bucket> buckets;
    Shelf<Tug> tugs;
    Shelf<Barge> barges;
    Shelf<Claim> claims;
    Shelf<Ground> grounds;
    Shelf<Cell> cells;
    Shelf<Consent> consents;
    Shelf<Condition> conditions;
    Shelf<Opening> openings;
    Shelf<Shift> shifts;
    Shelf<Station> stations;
    Shelf<Delay> delays;
    Shelf<Load> loads;
    Shelf<Tally> tallies;
    Shelf<LightReading> light_readings;
    Shelf<Trip> trips;
    Shelf<Release> releases;
    Shelf<Event> events;
    Shelf<Observation> observations;
    Shelf<Sounding> soundings;
    Shelf<Tide> tides;
    Shelf<Track> tracks;
    Shelf<Crew> crew;
    Shelf<Handover> handovers;
    Shelf<Survey> surveys;
    Shelf<Removed> removed;
    Shelf<DutyDone> duties_done;
};

}  // namespace spoilbook
