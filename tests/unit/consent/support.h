// SPDX-License-Identifier: GPL-3.0-or-later
// A small season in memory, to say one thing about limits at a time.
#pragma once

#include "model/consent/limit.h"
#include "model/unit/time_text.h"

namespace spoilbook {

/// Builds a season: one barge that states its in-situ volume, one trip a load.
class SmallSeason {
 public:
    SmallSeason() {
        season.zone = *Zone::named("Pacific/Auckland");
        consent = id();
        Consent row;
        row.id = consent;
        row.consent = "X-1";
        season.consents.add(row);
    }

    Id id() {
        Id fresh;
        ++last_;
        fresh.bytes[15] = static_cast<std::uint8_t>(last_);
        fresh.bytes[14] = static_cast<std::uint8_t>(last_ >> 8);
        fresh.bytes[0] = 1;
        return fresh;
    }

    Instant at(const char* text) const { return *parse_instant(text, season.zone); }

    /// A load of so much in situ that was released at the time; answers the trip's id.
    Id released(const char* when, std::optional<double> in_situ_m3) {
        return released_at(at(when), in_situ_m3, Id{});
    }

    Id released_at(Instant when, std::optional<double> in_situ_m3, const Id& cell) {
        Load load;
        load.id = id();
        load.load = "L";
        load.stated_in_situ_m3 = in_situ_m3;
        season.loads.add(load);
        Trip trip;
        trip.id = id();
        trip.trip = "T-" + std::to_string(last_);
        trip.load = load.id;
        trip.release_end = when;
        trip.cell = cell;
        season.trips.add(trip);
        return trip.id;
    }

    void condition(const char* number, const char* body, const char* from = "", const char* to = "") {
        Condition row;
        row.id = id();
        row.consent = consent;
        row.condition = number;
        row.kind = "quantity";
        row.body = body;
        if (*from != 0) row.from = at(from);
        if (*to != 0) row.to = at(to);
        season.conditions.add(row);
    }

    /// The next condition, of number 9, in force always.
    const Condition& condition_of(const char* kind, const std::string& body) {
        Condition row;
        row.id = id();
        row.consent = consent;
        row.condition = "9";
        row.kind = kind;
        row.body = body;
        season.conditions.add(row);
        return season.conditions.rows().back();
    }

    /// A row that is nothing but its name.
    template <class R>
    Id named(Shelf<R>& shelf, std::string R::*member, const char* name) {
        R row;
        row.id = id();
        row.*member = name;
        shelf.add(row);
        return row.id;
    }

    std::vector<LimitState> limits(const char* as_at) {
        ledgers_.push_back(std::make_unique<Ledger>(season));
        return limits_at(*ledgers_.back(), at(as_at));
    }

    Season season;
    Id consent;

 private:
    std::uint32_t last_ = 0;
    std::vector<std::unique_ptr<Ledger>> ledgers_;
};

}  // namespace spoilbook
