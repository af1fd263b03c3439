// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/return/condition_judged.h"

#include <catch2/catch.hpp>

using namespace spoilbook;

namespace {

/// Findings on trips of one season, by number.
struct Found {
    Condition night, records, later_night;
    std::vector<Trip> trips;

    Found() {
        night.condition = later_night.condition = "16";
        records.condition = "41";
        for (const char* name : {"T-1", "T-2", "T-3"}) {
            trips.emplace_back();
            trips.back().trip = name;
        }
    }
    [[nodiscard]] Finding on(const Condition& condition, std::size_t trip, Compliance state,
                             const char* why = "") const {
        Finding found;
        found.condition = &condition;
        found.trip = &trips.at(trip);
        found.state = state;
        found.why = why;
        return found;
    }
};

constexpr auto complied = Compliance::complied;
constexpr auto breached = Compliance::breached;
constexpr auto untold = Compliance::cannot_tell;

using Reasons = std::vector<std::string>;

}  // namespace

TEST_CASE("a cause is told once, with all that broke the condition by it", "[return]") {
    const Found found;
    JudgedConditions judged;
    judged.add(found.on(found.records, 0, breached, "not recorded: tug"));
    judged.add(found.on(found.records, 1, breached, "not recorded: cast off"));
    judged.add(found.on(found.records, 2, breached, "not recorded: tug"));
    judged.add(found.on(found.records, 2, breached, "not recorded: tug"));  // of its release too
    const auto list = std::move(judged).list();
    REQUIRE(list.size() == 1);
    CHECK(list[0].reasons == Reasons{"condition 41, trip T-1, trip T-3: not recorded: tug",
                                     "condition 41, trip T-2: not recorded: cast off"});
    CHECK(list[0].breached == 4);
    CHECK(list[0].failed.size() == 4);
}

TEST_CASE("what cannot be told is counted by its cause, and every piece of it kept as evidence", "[return]") {
    const Found found;
    JudgedConditions judged;
    for (std::size_t trip : {0U, 1U, 2U})
        judged.add(found.on(found.night, trip, untold, "no track"));
    const auto list = std::move(judged).list();
    CHECK(list.at(0).reasons == Reasons{"condition 16: it cannot be told of trip T-1 and 2 more (no track)"});
    CHECK(list[0].state() == untold);
    CHECK(list[0].failed[2].named() == "trip T-3");
}

TEST_CASE("the versions of one number are one condition, and a breach is stronger than a doubt", "[return]") {
    const Found found;
    JudgedConditions judged;
    judged.add(found.on(found.night, 0, untold, "its start and end are not both recorded"));
    judged.add(found.on(found.later_night, 1, breached, "not at this time"));
    judged.add(found.on(found.later_night, 2, complied));
    const auto list = std::move(judged).list();
    REQUIRE(list.size() == 1);
    CHECK(list[0].condition == &found.later_night);
    CHECK(list[0].state() == breached);
    CHECK(list[0].reasons.front() == "condition 16, trip T-2: not at this time");
    CHECK(list[0].failed.size() == 2);
}
