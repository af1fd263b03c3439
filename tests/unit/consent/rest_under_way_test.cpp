// SPDX-License-Identifier: GPL-3.0-or-later
// A load of which a part was released and that is under way again: what is left of it goes first.
#include <catch2/catch.hpp>
#include <deque>

#include "planned.h"

using namespace spoilbook;

namespace {

constexpr auto clear = CheckState::clear;
constexpr auto hold = CheckState::hold;

/// The planned load of 100 m³, and another of 80 m³ of which a share was released on the day before.
struct Rest : Planned {
    Id load, first;

    explicit Rest(double share) {
        Load row;
        row.id = load = small.id();
        row.load = "L-8";
        row.material = sand;
        row.stated_in_situ_m3 = 80;
        row.loading_end = small.at("2025-11-02T08:00");
        small.season.loads.add(row);
        Trip trip;
        trip.id = first = small.id();
        trip.trip = "T-1";
        trip.load = load;
        trip.departed = small.at("2025-11-02T09:00");
        trip.returned = small.at("2025-11-02T12:00");
        trip.outcome = "part";
        trip.cell = cell_w;
        small.season.trips.add(trip);
        release(first, "2025-11-02T10:00", share);
    }
    void release(const Id& trip, const char* when, double share) {
        Release part;
        part.id = small.id();
        part.trip = trip;
        part.doors_open = part.empty = small.at(when);
        part.cell = cell_w;
        part.share = share;
        small.season.releases.add(part);
    }
    Trip& again(const char* departed) {
        Trip trip;
        trip.id = small.id();
        trip.trip = "T-2";
        trip.load = load;
        trip.departed = small.at(departed);
        trip.cell = cell_e;
        return trips.emplace_back(trip);
    }
    CheckState judged(double term_m3, const std::string& more = "") {
        for (const auto& trip : trips)
            small.season.trips.add(trip);
        trips.clear();
        small.season.conditions = {};
        limit(R"("measure":"in_situ_m3","window":{"kind":"term"},"value":)" + std::to_string(term_m3) + more);
        return verdict();
    }

    std::deque<Trip> trips;
};

}  // namespace

TEST_CASE("what is left of a load that is under way again counts before the planned one", "[check][rest]") {
    Rest a(0.25);
    a.again("2025-11-03T09:00");
    CHECK(a.judged(180) == clear);  // 20 released, 60 under way and 100 planned
    CHECK(a.judged(179) == hold);
}

TEST_CASE("it counts where it goes now, and what was released before stays where it was", "[check][rest]") {
    for (const auto& [cell, limit, state] :
         {std::tuple("W", 120, clear), {"W", 119, hold}, {"E", 160, clear}, {"E", 159, hold}}) {
        Rest a(0.25);
        a.again("2025-11-03T09:00");
        a.planned.cell = *cell == 'W' ? a.cell_w : a.cell_e;
        CHECK(a.judged(limit, R"(,"each_of":"cell")") == state);
    }
}

TEST_CASE("it counts today, and what was released yesterday does not", "[check][rest]") {
    for (const auto& [limit, state] : {std::pair(160, clear), std::pair(159, hold)}) {
        Rest a(0.25);
        a.again("2025-11-03T09:00");
        a.small.season.trips.add(a.trips.front());
        a.limit(R"("measure":"in_situ_m3","window":{"kind":"calendar","unit":"day"},"value":)" +
                std::to_string(limit));
        CHECK(a.verdict() == state);
    }
}

TEST_CASE("a rest that came back and lies alongside, or has gone, is not under way", "[check][rest]") {
    Rest alongside(0.25);  // it opens the next load, which counts it
    CHECK(alongside.judged(120) == clear);
    CHECK(alongside.judged(119) == hold);
    Rest later(0.25);
    later.again("2025-11-03T10:00:01");
    CHECK(later.judged(120) == clear);
    Rest gone(0.25);
    const Id second = gone.again("2025-11-03T08:00").id;
    gone.release(second, "2025-11-03T09:00", 0.75);
    CHECK(gone.judged(180) == clear);
    CHECK(gone.judged(179) == hold);
    Rest back(0.25);
    Trip& turned = back.again("2025-11-03T08:00");
    turned.outcome = "landed";
    turned.returned = back.small.at("2025-11-03T09:30");
    CHECK(back.judged(120) == clear);
}

TEST_CASE("a hold's end under the next version counts the rest too", "[check][rest]") {
    Rest a(0.25);
    a.again("2025-11-03T09:00");
    a.small.season.trips.add(a.trips.front());
    for (const bool is_first : {true, false}) {
        Condition row;
        row.id = a.small.id();
        row.consent = a.small.consent;
        row.condition = "9";
        row.kind = "quantity";
        row.body = is_first ? R"({"measure":"in_situ_m3","window":{"kind":"term"},"value":150})"
                            : R"({"measure":"in_situ_m3","window":{"kind":"term"},"value":179})";
        (is_first ? row.to : row.from) = a.small.at("2025-11-20T00:00");
        a.small.season.conditions.add(row);
    }
    CHECK(a.verdict() == hold);
    CHECK_FALSE(a.until().has_value());  // 180 of 179 under the next version still
}
