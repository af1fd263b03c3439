// SPDX-License-Identifier: GPL-3.0-or-later
// What a condition says of what happened, kind by kind: time, sea and wind, record, watch.
#include <catch2/catch.hpp>

#include "past.h"

using namespace spoilbook;

namespace {

constexpr const char* night =
    R"({"mode":"forbid","hours":["20:00..06:00"],"applies":{"activity":"release"}})";

}  // namespace

TEST_CASE("a release is judged all the time that the doors stood open", "[findings]") {
    Past past;
    past.release("2025-11-03T19:40", "2025-11-03T19:59:59");
    past.release("2025-11-03T19:55", "2025-11-03T20:00");  // ends as the night begins
    past.release("2025-11-04T05:58", "2025-11-04T06:05");  // opened too early
    past.release("2025-11-05T19:00", "2025-11-06T07:00");  // the night lies between
    past.release("", "2025-11-07T12:00");                  // when she opened is not known
    past.release("", "2025-11-07T22:00");                  // but this is by night anyhow
    const auto found = time_findings(past.book(), past.condition("time", night), past.all());
    CHECK(states(found) == States{complied, breached, breached, breached, untold, breached});
    CHECK(found[1].named() == "trip T-2");
    CHECK(found[4].why == "its start and end are not both recorded");
}

TEST_CASE("what happened is judged by the version in force as it ended, and by none that is not",
          "[findings]") {
    Past past;
    past.release("2025-11-03T22:00", "2025-11-03T22:10");
    past.release("2025-11-30T23:50", "2025-12-01T00:10");
    Condition first = past.condition("time", night);
    first.to = past.at("2025-12-01T00:00");
    Condition second = first;
    second.from = first.to;
    second.to.reset();
    CHECK(time_findings(past.book(), first, past.all()).size() == 1);
    CHECK(time_findings(past.book(), second, past.all()).size() == 1);
}

TEST_CASE("findings are those of the period, to the as-at", "[findings]") {
    Past past;
    for (const char* day : {"2025-10-31", "2025-11-01", "2025-11-30", "2025-12-01"})
        past.release((std::string(day) + "T09:00").c_str(), (std::string(day) + "T09:10").c_str());
    const auto& condition = past.condition("time", night);
    const Period november{past.at("2025-11-01T00:00"), past.at("2025-12-01T00:00")};
    CHECK(time_findings(past.book(), condition, {past.all().as_at, november}).size() == 2);
    CHECK(time_findings(past.book(), condition, {past.at("2025-11-30T09:09"), november}).size() == 1);
    CHECK(time_findings(past.book(), condition, {past.at("2025-11-30T09:10"), november}).size() == 2);
}

TEST_CASE("dredging is judged where loading began and ended", "[findings]") {
    Past past;
    past.release("2025-11-04T12:00", "2025-11-04T12:10");
    past.loads[0].loading_start = past.at("2025-11-03T22:00");
    past.loads[0].loading_end = past.at("2025-11-04T09:00");
    const auto& both = past.condition("time", R"({"mode":"forbid","hours":["20:00..06:00"]})");
    CHECK(states(time_findings(past.book(), both, past.all())) == States{complied, breached});
    const auto& dredge = past.condition(
        "time", R"({"mode":"forbid","hours":["20:00..06:00"],"applies":{"activity":"dredge"}})");
    const auto found = time_findings(past.book(), dredge, past.all());
    REQUIRE(states(found) == States{breached});
    CHECK(found[0].named() == "load L");
}

TEST_CASE("the sea of a release is the trip's own, else the last observation of three hours", "[findings]") {
    Past past;
    past.seen("2025-11-03T06:00", 2.4);
    past.release("2025-11-03T08:00", "2025-11-03T08:10").wave_height_m = 1.8;
    past.release("2025-11-03T08:30", "2025-11-03T08:40").wave_height_m = 1.9;
    past.release("2025-11-03T09:00", "2025-11-03T09:10");
    past.release("2025-11-03T09:00:00.001", "2025-11-03T09:10:01");
    const auto& sea = past.condition("series", R"({"variable":"wave_height_m","compare":{"absolute":1.8},
        "applies":{"activity":"release"}})");
    const auto found = sea_findings(past.book(), sea, past.all());
    CHECK(states(found) == States{complied, breached, breached, untold});
    CHECK(found[1].why == "wave height 1.9 m is above 1.8 m");
    CHECK(found[2].why == "wave height 2.4 m is above 1.8 m");
}

TEST_CASE("wind is held against a level, or against another place", "[findings]") {
    Past past;
    past.seen("2025-11-03T07:30", {}, 24.0, "bar");
    past.seen("2025-11-03T07:30", {}, 15.0, "quay");
    past.release("2025-11-03T08:00", "2025-11-03T08:10");
    const auto judged = [&](const char* compare) {
        const std::string body = std::string(R"({"variable":"wind_kn","sites":["bar"],"control":"quay",
            "applies":{"activity":"release"},"compare":)") +
                                 compare + "}";
        return sea_findings(past.book(), past.condition("series", body.c_str()), past.all()).at(0).state;
    };
    CHECK(judged(R"({"absolute":24})") == complied);
    CHECK(judged(R"({"absolute":23.9})") == breached);
    CHECK(judged(R"({"above_control":9})") == complied);
    CHECK(judged(R"({"above_control":8})") == breached);
    CHECK(judged(R"({"times_control":1.5})") == breached);
    CHECK(judged(R"({"higher_of":[{"absolute":20},{"times_control":2}]})") == complied);
    CHECK(judged(R"({"bands":[{"control_from":20,"absolute":10},{"control_to":20,"absolute":22}]})") ==
          breached);
}

TEST_CASE("a level that must be passed for hours is not told by one look at it", "[findings]") {
    Past past;
    past.release("2025-11-03T08:00", "2025-11-03T08:10").wave_height_m = 3;
    past.release("2025-11-03T09:00", "2025-11-03T09:10").wave_height_m = 1;
    const auto& held = past.condition("series", R"({"variable":"wave_height_m","compare":{"absolute":1.8},
        "passes":{"held_hours":2},"applies":{"activity":"release"}})");
    CHECK(states(sea_findings(past.book(), held, past.all())) == States{untold, complied});
}

TEST_CASE("a mean of observations is a mean", "[findings]") {
    Past past;
    past.seen("2025-11-03T07:00", 1.0);
    past.seen("2025-11-03T07:30", 1.5);
    past.seen("2025-11-03T08:00", 2.6);  // mean of the last hour, (07:00, 08:00]: 2.05
    past.release("2025-11-03T08:00", "2025-11-03T08:10");
    const auto judged = [&](const char* level) {
        const std::string body =
            std::string(R"({"variable":"wave_height_m","statistic":{"kind":"mean"},"over_minutes":60,
            "applies":{"activity":"release"},"compare":{"absolute":)") +
            level + "}}";
        return sea_findings(past.book(), past.condition("series", body.c_str()), past.all()).at(0).state;
    };
    CHECK(judged("2.04") == breached);
    CHECK(judged("2.06") == complied);
}

TEST_CASE("a trip lacks what is required of it, once a day has gone by", "[findings]") {
    Past past;
    const Trip& whole = past.release("2025-11-03T08:00", "2025-11-03T08:10");
    const Trip& bare = past.release("2025-11-03T18:00", "2025-11-03T18:10");
    const auto& condition = past.condition(
        "record", R"({"required":{"trip":["tug","departed"],"release":["doors_open","lat","share"]}})");
    const RecordColumns columns{
        held<Trip>({row_with<Trip>(whole.id, {"tug", "departed", "release_start", "lat"}),
                    row_with<Trip>(bare.id, {"tug", "release_start"})}),
        held<Load>({}), held<Release>({})};
    const auto found = record_findings(past.book(), condition, past.all(), columns);
    CHECK(states(found) == States{complied, complied, breached, breached});
    CHECK(found[2].why == "not recorded: cast off");
    CHECK(found[2].trip == &past.book().season().trips.rows()[1]);
    CHECK(found[3].why == "not recorded: where the doors opened, WGS 84");
    const JudgedSpan soon{past.at("2025-11-04T18:09"), std::nullopt};
    CHECK(states(record_findings(past.book(), condition, soon, columns)) == States{complied, complied});
    const JudgedSpan later{past.at("2025-11-04T18:10"), std::nullopt};
    CHECK(record_findings(past.book(), condition, later, columns).size() == 4);
}

TEST_CASE("a column that no book has cannot be told", "[findings]") {
    Past past;
    past.release("2025-11-03T08:00", "2025-11-03T08:10");
    const auto& condition = past.condition("record", R"({"required":{"trip":["colour"]}})");
    const auto found = record_findings(past.book(), condition, past.all(), {held<Trip>({}), {}, {}});
    REQUIRE(states(found) == States{untold});
    CHECK(found[0].why == "the book has no column colour");
}

TEST_CASE("a material goes to the grounds that its list names", "[findings]") {
    Past past;
    past.release("2025-11-03T08:00", "2025-11-03T08:10");
    past.release("2025-11-03T09:00", "2025-11-03T09:10").ground = past.shallow;
    past.release("2025-11-03T10:00", "2025-11-03T10:10");
    past.loads[2].material = past.clay;
    past.release("2025-11-03T11:00", "2025-11-03T11:10").ground = Id{};
    past.release("2025-11-03T12:00", "2025-11-03T12:10");
    past.loads[4].material = Id{};
    const auto& condition =
        past.condition("record", R"({"allowed":{"material_ground":{"sand":["Deep Hole"]}}})");
    const auto found = record_findings(past.book(), condition, past.all(), {});
    CHECK(states(found) == States{complied, breached, untold, untold, untold});
    CHECK(found[1].why == "sand may not go to Bank");
    CHECK(found[2].why == "the condition says nothing of clay");
}

TEST_CASE("draught lost in transit cannot be told without draughts before the release", "[findings]") {
    Past past;
    past.release("2025-11-03T08:00", "2025-11-03T08:10");
    const auto& condition = past.condition("record", R"({"bounds":{"draught_lost_m":0.1}})");
    CHECK(states(record_findings(past.book(), condition, past.all(), {})) == States{untold});
}

TEST_CASE("a watch is kept without a break for its time before the doors open", "[findings]") {
    Past past;
    for (const char* hour : {"08", "09", "10", "11", "12"})
        past.release((std::string("2025-11-03T") + hour + ":00").c_str(),
                     (std::string("2025-11-03T") + hour + ":10").c_str());
    past.watch(past.trips[0], "2025-11-03T07:30", "");
    past.watch(past.trips[1], "2025-11-03T08:31", "2025-11-03T09:10");
    past.watch(past.trips[2], "2025-11-03T09:20", "2025-11-03T09:50");  // two, one after the other
    past.watch(past.trips[2], "2025-11-03T09:50", "2025-11-03T10:10");
    past.watch(past.trips[3], "2025-11-03T10:20", "2025-11-03T10:59");  // broken off
    const auto& condition = past.condition("watch", R"({"before_minutes":30,"radius_m":300})");
    const auto found = watch_findings(past.book(), condition, past.all(), past.watches);
    CHECK(states(found) == States{complied, breached, complied, breached, untold});
    CHECK(found[1].why == "the watch began 29 min before the doors opened, not 30");
    const auto& logged = past.condition("watch", R"({"before_minutes":30,"log":true})");
    CHECK(watch_findings(past.book(), logged, past.all(), past.watches).back().state == breached);
}

TEST_CASE("what was seen inside the radius must have been gone for its time", "[findings]") {
    Past past;
    past.release("2025-11-03T08:00", "2025-11-03T08:10");
    const auto& condition =
        past.condition("watch", R"({"before_minutes":30,"radius_m":300,"clear_minutes":20})");
    Watch& watch = past.watch(past.trips[0], "2025-11-03T07:00", "2025-11-03T08:10");
    const auto judged = [&] {
        return watch_findings(past.book(), condition, past.all(), past.watches).at(0).state;
    };
    watch.species = "dolphin";
    watch.distance_m = 301;
    CHECK(judged() == complied);
    watch.distance_m = 300;
    CHECK(judged() == breached);
    watch.cleared = past.at("2025-11-03T07:40");
    CHECK(judged() == complied);
    watch.cleared = past.at("2025-11-03T07:40:00.001");
    CHECK(judged() == breached);
    watch.distance_m.reset();
    CHECK(judged() == untold);
    watch.number = 0;
    CHECK(judged() == complied);
}
