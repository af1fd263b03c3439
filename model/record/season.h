// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <atomic>
#include <memory>
#include <unordered_map>
#include <utility>
#include <vector>

#include "model/record/records.h"
#include "model/unit/zone.h"

namespace spoilbook {

/// Rows of one kind, found by their id. Copies share their rows until one of them adds: what would be if is
/// asked of a season of twenty years by changing one shelf of its copy.
template <class R>
class Shelf {
 public:
    void add(R record) {
        Held& own = owned();
        own.places.emplace(record.id, own.rows.size());
        own.rows.push_back(std::move(record));
    }
    void reserve(std::size_t n) {
        Held& own = owned();
        own.rows.reserve(n);
        own.places.reserve(n);
    }
    [[nodiscard]] const std::vector<R>& rows() const {
        static const std::vector<R> none;
        return held_ ? held_->rows : none;
    }
    /// Null where there is no such row (also for a blank reference).
    [[nodiscard]] const R* find(const Id& id) const {
        if (!held_) return nullptr;
        const auto place = held_->places.find(id);
        return place == held_->places.end() ? nullptr : &held_->rows[place->second];
    }
    [[nodiscard]] std::size_t size() const { return rows().size(); }

 private:
    struct Held {
        std::vector<R> rows;
        std::unordered_map<Id, std::size_t> places;
    };
    Held& owned() {
        if (!held_)
            held_ = std::make_shared<Held>();
        else if (held_.use_count() > 1)
            held_ = std::make_shared<Held>(*held_);
        else  // what a copy on another thread still read of it comes before what is added
            std::atomic_thread_fence(std::memory_order_acquire);
        return *held_;
    }

    std::shared_ptr<Held> held_;
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
