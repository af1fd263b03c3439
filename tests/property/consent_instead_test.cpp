// SPDX-License-Identifier: GPL-3.0-or-later
// A ledger that says what would be, held against the ledger of a season in which it is so.
#include <rapidcheck.h>
#include <catch2/catch.hpp>
#include <set>

#include "model/consent/count_list.h"
#include "tests/property/consent_seasons.h"

using namespace spoilbook;
using namespace seasons;

namespace {

/// Some of its trips released in two parts, and a load that is not released yet.
SmallSeason any_book(const Zone& zone, std::size_t place) {
    SmallSeason small;
    small.season.zone = zone;
    for (const auto& put : any_season(zone, place)) {
        const Id trip = small.released_at(put.at, put.m3, Id{});
        if (!*rc::gen::arbitrary<bool>()) continue;
        for (const double share : {0.25, 0.75}) {
            Release part;
            part.id = small.id();
            part.trip = trip;
            part.share = share;
            part.empty = put.at + *rc::gen::element<std::int64_t>(0, ms_per_hour);
            small.season.releases.add(part);
        }
    }
    Load waiting;
    waiting.id = small.id();
    waiting.stated_in_situ_m3 = 50;
    small.season.loads.add(waiting);
    return small;
}

/// A trip each of some of its loads, at one instant or another of the season.
std::vector<Trip> any_instead(SmallSeason& small, std::size_t place) {
    std::vector<Trip> instead;
    for (const auto& load : small.season.loads.rows()) {
        if (*rc::gen::inRange(0, 3) != 0) continue;
        Trip trip;
        trip.id = small.id();
        trip.load = load.id;
        trip.release_start = trip.release_end = any_instant(small.season.zone, place);
        instead.push_back(trip);
    }
    return instead;
}

Season with_trips(const Season& season, const std::vector<Trip>& instead) {
    std::set<Id> theirs;
    for (const auto& trip : instead)
        theirs.insert(trip.load);
    Season other = season;
    other.trips = {};
    for (const auto& trip : season.trips.rows()) {
        if (!theirs.contains(trip.load)) other.trips.add(trip);
    }
    for (const auto& trip : instead)
        other.trips.add(trip);
    return other;
}

double in_situ_m3(const LedgerLine& line) {
    return line.share * line.figures->counted_by()->in_situ_m3->value;
}

}  // namespace

TEST_CASE("a ledger with other trips lists what the ledger of a season with those trips lists", "[ledger]") {
    CHECK(rc::check([] {
        const auto place = *rc::gen::inRange<std::size_t>(0, 4);
        auto small = any_book(*Zone::named("Pacific/Auckland"), place);
        const auto instead = any_instead(small, place);
        const Ledger done(small.season);
        const Ledger would_be(done, instead);
        const Season other = with_trips(small.season, instead);
        const Ledger anew(other);
        const auto& lines = would_be.released();
        RC_ASSERT(lines.size() == anew.released().size());
        for (std::size_t i = 0; i < lines.size(); ++i) {
            const auto& line = lines[i];
            const auto& same = anew.released()[i];
            RC_ASSERT(line.at == same.at);
            RC_ASSERT(line.release->trip->id == same.release->trip->id);
            RC_ASSERT(line.load->id == same.load->id);
            RC_ASSERT(line.load_number == same.load_number);
            RC_ASSERT(in_situ_m3(line) == in_situ_m3(same));
            for (std::size_t j = 0; j < i; ++j) {
                const bool one_trip = line.release->trip == lines[j].release->trip;
                RC_ASSERT((line.trip_number == lines[j].trip_number) == one_trip);
            }
        }
        // What was done is as it was.
        RC_ASSERT(done.released().size() == Ledger(small.season).released().size());
    }));
}

TEST_CASE("counts of a span are those of the whole season that lie in it", "[ledger]") {
    CHECK(rc::check([] {
        const auto place = *rc::gen::inRange<std::size_t>(0, 4);
        const auto small = any_book(*Zone::named("Pacific/Auckland"), place);
        const Ledger ledger(small.season);
        Condition condition;
        condition.kind = "quantity";
        condition.body = R"({"value":1,"measure":")" + *rc::gen::element<std::string>("in_situ_m3", "trips") +
                         R"(","window":{"kind":"term"}})";
        const auto quantity = quantity_from(condition, small.season.zone);
        CountsWanted wanted;
        if (*rc::gen::arbitrary<bool>()) wanted.from = any_instant(small.season.zone, place);
        if (*rc::gen::arbitrary<bool>()) wanted.to = any_instant(small.season.zone, place);
        wanted.with_u = *rc::gen::arbitrary<bool>();
        const auto some = counts_of(*quantity, {}, condition, ledger, wanted);
        std::size_t next = 0;
        for (const auto& count : counts_of(*quantity, {}, condition, ledger)) {
            if ((wanted.from && count.at < *wanted.from) || (wanted.to && count.at > *wanted.to)) continue;
            RC_ASSERT(next < some.size());
            RC_ASSERT(some[next].at == count.at);
            RC_ASSERT(some[next].load == count.load);
            RC_ASSERT(some[next].amount.value == count.amount.value);
            ++next;
        }
        RC_ASSERT(next == some.size());
    }));
}
