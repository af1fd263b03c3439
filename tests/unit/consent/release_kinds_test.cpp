// SPDX-License-Identifier: GPL-3.0-or-later
// The release check, kind by kind, and every window and member that a limit may stand over.
#include <catch2/catch.hpp>

#include "planned.h"

using namespace spoilbook;

namespace {

constexpr const char* in_situ = R"("measure":"in_situ_m3",)";
constexpr auto clear = CheckState::clear;
constexpr auto hold = CheckState::hold;
constexpr auto untold = CheckState::cannot_tell;

std::string murky(const char* action) {
    return std::string(R"({"variable":"turbidity","compare":{"absolute":5},"tier":2,"responses":[
        {"tier":1,"action":"stop"},{"tier":2,"action":")") +
           action + R"("}]})";
}

}  // namespace

TEST_CASE("a campaign's limit holds until the campaign ends", "[check]") {
    Planned a;
    a.small.released("2025-09-02T10:00", 900);
    a.small.released("2025-08-30T10:00", 5000);  // before it
    a.limit(std::string(in_situ) + R"("value":1000,"window":{"kind":"campaign","name":"spring"})");
    CHECK(a.verdict() == clear);
    a.limit(std::string(in_situ) + R"("value":999,"window":{"kind":"campaign"})");
    CHECK(a.verdict() == hold);
    CHECK(a.until() == a.small.at("2025-12-01T00:00"));
}

TEST_CASE("a phase's limit holds only inside the phase", "[check]") {
    Planned a;
    a.small.released("2025-10-30T10:00", 900);
    a.limit(std::string(in_situ) +
            R"("value":999,"window":{"kind":"phase","from":"2025-10-01","to":"2025-11-10"})");
    CHECK(a.verdict() == hold);
    CHECK(a.until() == a.small.at("2025-11-10T00:00"));
    a.planned.at = a.small.at("2025-11-10T00:00");
    CHECK(a.verdict() == clear);
}

TEST_CASE("a consent year begins on its day", "[check]") {
    Planned a;
    a.small.released("2025-10-30T10:00", 950);
    a.limit(std::string(in_situ) + R"("value":1000,"window":{"kind":"consent_year"})");
    CHECK(a.verdict() == hold);
    CHECK(a.until() == a.small.at("2026-01-01T00:00"));
}

TEST_CASE("a limit for one trip is held against this load alone", "[check]") {
    Planned a;
    a.small.released("2025-11-02T10:00", 5000);
    a.limit(std::string(in_situ) + R"("value":100,"window":{"kind":"trip"})");
    CHECK(a.verdict() == clear);
    a.limit(std::string(in_situ) + R"("value":99,"window":{"kind":"trip"})");
    CHECK(a.verdict() == hold);
}

TEST_CASE("a reserve is held back until its day, and for ever without one", "[check]") {
    for (const auto& [unlocked, until] :
         {std::pair(R"({"on":"2025-11-20"})", "2025-11-20T00:00"), std::pair(R"("the council")", "")}) {
        Planned a;
        a.small.released("2025-11-02T10:00", 800);
        a.limit(std::string(in_situ) +
                R"("value":1000,"window":{"kind":"term"},"reserve":{"value":150,"unlocked_by":)" + unlocked +
                "}");
        CHECK(a.verdict() == hold);
        CHECK(a.until() == (*until == 0 ? std::nullopt : std::optional(a.small.at(until))));
    }
}

TEST_CASE("a share of a stated volume is that volume's part", "[check]") {
    Planned a;
    a.small.released_at(a.small.at("2025-11-02T10:00"), 150, a.cell_w);
    a.planned.cell = a.cell_w;
    a.limit(std::string(in_situ) +
            R"("share_of_total":0.25,"of":1000,"each_of":"cell","window":{"kind":"term"})");
    CHECK(a.verdict() == clear);
    a.limit(std::string(in_situ) +
            R"("share_of_total":0.249,"of":1000,"each_of":"cell","window":{"kind":"term"})");
    CHECK(a.verdict() == hold);
    a.planned.cell = a.cell_e;
    CHECK(a.verdict() == clear);
}

TEST_CASE("a limit counts in its own measure and by its own method", "[check]") {
    Planned a;
    a.limit(R"("measure":"hopper_m3","value":125,"window":{"kind":"term"})");
    CHECK(a.verdict() == clear);
    a.limit(R"("measure":"hopper_m3","value":124,"window":{"kind":"term"})");
    CHECK(a.verdict() == hold);
    Planned by_dips;
    by_dips.limit(std::string(in_situ) + R"("method":"ullage","value":1,"window":{"kind":"term"})");
    CHECK(by_dips.verdict() == untold);  // no dips: not by that method
}

TEST_CASE("trips and days count once", "[check]") {
    Planned a;
    a.small.released("2025-11-03T06:00", 1);
    a.limit(R"("measure":"trips","value":2,"window":{"kind":"calendar","unit":"day"})");
    CHECK(a.verdict() == clear);
    a.limit(R"("measure":"days","value":1,"window":{"kind":"calendar","unit":"month"})");
    CHECK(a.verdict() == clear);  // the day counts already
    a.planned.at = a.small.at("2025-11-04T10:00");
    CHECK(a.verdict() == hold);
}

TEST_CASE("how long the doors will stand open is not known, and matters where the limit is near", "[check]") {
    const std::string day = R"("measure":"hours","window":{"kind":"calendar","unit":"day"},"value":)";
    Planned nothing;  // nothing on record says how long a release takes
    nothing.limit(day + "10");
    CHECK(nothing.verdict() == untold);
    CHECK_THAT(nothing.check().reasons.at(0).why, Catch::Contains("how long"));
    const auto open_for = [](Planned& a, const char* opened, const char* ended) {
        Trip trip;
        trip.id = a.small.id();
        trip.release_start = a.small.at(opened);
        trip.release_end = a.small.at(ended);
        a.small.season.trips.add(trip);
    };
    // The longest on record took 1.5 h, another 2 h of today are used.
    for (const auto& [hours, state] :
         {std::pair("3.5", clear), {"3.4", untold}, {"2", untold}, {"1.9", hold}}) {
        CAPTURE(hours);
        Planned a;
        open_for(a, "2025-10-03T06:00", "2025-10-03T07:30");
        open_for(a, "2025-11-03T05:00", "2025-11-03T06:00");
        open_for(a, "2025-11-03T07:00", "2025-11-03T08:00");
        open_for(a, "2025-11-04T07:00", "2025-11-04T20:00");  // after the plan
        a.limit(day + hours);
        CHECK(a.verdict() == state);
    }
    // A load that waits full opens its doors for as long.
    for (const auto& [hours, state] : {std::pair("3", clear), {"2.9", untold}}) {
        Planned a;
        open_for(a, "2025-10-03T06:00", "2025-10-03T07:30");
        Load waiting;
        waiting.id = a.small.id();
        waiting.loading_end = a.small.at("2025-11-03T08:00");
        a.small.season.loads.add(waiting);
        a.limit(day + hours);
        CHECK(a.verdict() == state);
    }
}

TEST_CASE("a floor never holds a release, nor does a limit on what is dredged", "[check]") {
    Planned a;
    a.limit(std::string(in_situ) + R"("op":"at_least","value":5000,"window":{"kind":"term"})");
    a.limit(std::string(in_situ) + R"("value":1,"window":{"kind":"term"},"applies":{"activity":"dredge"})");
    CHECK(a.verdict() == clear);
}

TEST_CASE("an open event whose answer is to stop holds until its all-clear", "[check]") {
    Planned a;
    a.condition("series", murky("stop"));
    CHECK(a.verdict() == untold);  // nobody asked the loggers
    a.water(a.small.at("2025-11-03T07:00"));
    CHECK(a.verdict() == hold);
    CHECK_FALSE(a.until().has_value());
    a.water(std::nullopt);
    CHECK(a.verdict() == clear);
    a.water(std::nullopt, false);
    CHECK(a.verdict() == untold);
    a.facts.water.emplace();
    CHECK(a.verdict() == untold);  // no site of it has a logger
}

TEST_CASE("an event whose answer is another, or of another tier, holds nothing", "[check]") {
    for (const char* action : {"tell", "check", "slow", "move"}) {
        Planned a;
        a.condition("series", murky(action));
        a.water(a.small.at("2025-11-03T07:00"));
        CHECK(a.verdict() == clear);
    }
    Planned dredging;
    dredging.condition("series", R"({"variable":"turbidity","applies":{"activity":"dredge"},
        "compare":{"absolute":5},"responses":[{"action":"stop"}]})");
    dredging.water(dredging.small.at("2025-11-03T07:00"));
    CHECK(dredging.verdict() == clear);
}

TEST_CASE("to change the cell holds the one that was in use as the event began", "[check]") {
    Planned a;
    a.condition("series", murky("change_cell"));
    a.water(a.small.at("2025-11-03T07:00"));
    CHECK(a.verdict() == untold);
    a.small.released_at(a.small.at("2025-11-03T06:00"), 1, a.cell_w);
    a.small.released_at(a.small.at("2025-11-03T08:00"), 1, a.cell_e);  // after it began
    a.planned.cell = a.cell_w;
    CHECK(a.verdict() == hold);
    a.planned.cell = a.cell_e;
    CHECK(a.verdict() == clear);
}

TEST_CASE("wind is the last observation of three hours, or as old as the condition lets it be", "[check]") {
    Planned a;
    Observation seen;
    seen.id = a.small.id();
    seen.time = a.small.at("2025-11-03T06:30");
    seen.wind_kn = 26;
    a.small.season.observations.add(seen);
    a.condition("series", R"({"variable":"wind_kn","compare":{"absolute":25}})");
    CHECK(a.verdict() == untold);
    a.condition("series", R"({"variable":"wind_kn","compare":{"absolute":25},"max_age_hours":3.5})");
    CHECK(a.verdict() == hold);
    CHECK(a.check().reasons.at(1).why == "wind 26 kn is above 25 kn");
}

TEST_CASE("a material that may not go to the ground holds, one that is not named cannot be told", "[check]") {
    const auto under = [](const char* lists) {
        Planned a;
        a.condition("record", std::string(R"({"allowed":{"material_ground":)") + lists + "}}");
        return a.verdict();
    };
    CHECK(under(R"({"sand":["Deep Hole"]})") == clear);
    CHECK(under(R"({"sand":["Bank"]})") == hold);
    CHECK(under(R"({"sand":[]})") == hold);
    CHECK(under(R"({"clay":["Deep Hole"]})") == untold);
}

TEST_CASE("a watch is something to do before the doors open, not a doubt", "[check]") {
    Planned a;
    a.condition("watch", R"({"before_minutes":30,"radius_m":300,"clear_minutes":20})");
    const auto check = a.check();
    CHECK(check.verdict == clear);
    REQUIRE(check.to_do.size() == 1);
    CHECK(check.to_do[0].from == a.small.at("2025-11-03T09:30"));
    CHECK(check.to_do[0].what == "keep watch 300 m around");
}

TEST_CASE("what the watch has seen holds until the water was clear for its time", "[check]") {
    Planned a;
    a.condition("watch", R"({"before_minutes":30,"radius_m":300,"clear_minutes":20})");
    Trip trip;
    trip.id = a.small.id();
    trip.load = a.planned.load;
    trip.departed = a.small.at("2025-11-03T08:30");
    a.small.season.trips.add(trip);
    Watch watch;
    watch.trip = trip.id;
    watch.start = a.small.at("2025-11-03T09:30");
    watch.species = "seal";
    watch.distance_m = 100;
    a.facts.watches = {watch};
    CHECK(a.verdict() == hold);
    CHECK_FALSE(a.until().has_value());
    CHECK(a.check().to_do.empty());
    a.facts.watches[0].cleared = a.small.at("2025-11-03T09:50");
    CHECK(a.until() == a.small.at("2025-11-03T10:10"));
    a.planned.at = a.small.at("2025-11-03T10:10");
    CHECK(a.verdict() == clear);
}
