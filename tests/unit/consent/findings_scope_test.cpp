// SPDX-License-Identifier: GPL-3.0-or-later
// What of a trip or release puts it under a condition, and what if that is not recorded.
#include <catch2/catch.hpp>

#include "past.h"

using namespace spoilbook;

TEST_CASE("a trip that released in two places is judged by a condition on either", "[findings]") {
    Past past;
    Trip& trip = past.release("", "");
    trip.tug = Id{};
    trip.returned = past.at("2025-11-03T10:00");
    for (const auto& [when, ground] :
         {std::pair("2025-11-03T08:00", past.deep), {"2025-11-03T09:00", past.shallow}}) {
        Release part;
        part.id = past.small.id();
        part.trip = trip.id;
        part.ground = ground;
        part.doors_open = part.empty = past.at(when);
        part.share = 0.5;
        past.small.season.releases.add(part);
    }
    for (const char* ground : {"Deep Hole", "Bank"}) {
        CAPTURE(ground);
        const std::string body =
            std::string(R"({"required":{"trip":["tug"]},"applies":{"grounds":[")") + ground + R"("]}})";
        const auto found = record_findings(past.book(), past.condition("record", body.c_str()), past.all(),
                                           {held<Trip>({row_with<Trip>(trip.id, {})}), {}, {}});
        REQUIRE(states(found) == States{breached});
        CHECK(found[0].trip->trip == trip.trip);
    }
    const auto elsewhere =
        past.condition("record", R"({"required":{"trip":["tug"]},"applies":{"grounds":["Nowhere"]}})");
    CHECK(record_findings(past.book(), elsewhere, past.all(),
                          {held<Trip>({row_with<Trip>(trip.id, {})}), {}, {}})
              .empty());
}

TEST_CASE("what a condition is about and nobody recorded leaves it open, where it would be broken",
          "[findings]") {
    Past past;
    past.release("2025-11-03T21:00", "2025-11-03T21:10");  // at night
    past.release("2025-11-04T21:00", "2025-11-04T21:10");
    past.loads[1].material = Id{};
    past.release("2025-11-05T21:00", "2025-11-05T21:10");
    past.loads[2].material = past.clay;
    past.release("2025-11-06T12:00", "2025-11-06T12:10");  // by day
    past.loads[3].material = Id{};
    const auto& condition = past.condition("time", R"({"mode":"forbid","hours":["20:00..06:00"],
                    "applies":{"activity":"release","materials":["sand"]}})");
    const auto found = time_findings(past.book(), condition, past.all());
    REQUIRE(states(found) == States{breached, untold});
    CHECK(found[1].release->trip->trip == "T-2");
    CHECK(found[1].why == "not recorded: material; if the condition is about it: not at this time");
}

TEST_CASE("what is not recorded is named: claim, cell, ground, barge or tug, class", "[findings]") {
    Past past;
    past.release("2025-11-03T21:00", "2025-11-03T21:10").ground = Id{};
    Cell cell;
    cell.id = past.small.id();
    cell.ground = past.deep;
    cell.cell = "A1";
    cell.kind = "cell";
    past.small.season.cells.add(cell);
    past.small.named(past.small.season.claims, &Claim::claim, "Q1");
    past.small.named(past.small.season.tugs, &Tug::name, "Skua");
    for (const auto& [scope, what] : {std::pair(R"("claims":["Q1"])", "claim"),
                                      {R"("cells":["A1"])", "cell"},
                                      {R"("grounds":["Deep Hole"])", "ground"},
                                      {R"("plant":["Skua"])", "barge or tug"},
                                      {R"("classes":["sea"])", "class"},
                                      {R"("claims":["Q1"],"grounds":["Bank"])", "ground, claim"}}) {
        CAPTURE(scope);
        const std::string body =
            std::string(R"({"mode":"forbid","hours":["20:00..06:00"],"applies":{)") + scope + "}}";
        const auto found = time_findings(past.book(), past.condition("time", body.c_str()), past.all());
        REQUIRE(states(found) == States{untold});
        CHECK(found[0].why.rfind(std::string("not recorded: ") + what + ";", 0) == 0);
    }
}
