// SPDX-License-Identifier: GPL-3.0-or-later
// Faults of the release check that the oracle found in random seasons (tests/oracle), each in the smallest
// season that shows it. The planned load holds 100 m³ in situ and would be released on 3 November at 10:00.
#include <catch2/catch.hpp>

#include "planned.h"

using namespace spoilbook;

namespace {

constexpr auto clear = CheckState::clear;
constexpr auto hold = CheckState::hold;
constexpr auto untold = CheckState::cannot_tell;

std::string box(const char* west, const char* east) {
    const std::string w = west, e = east;
    return R"({"type":"Polygon","coordinates":[[[)" + w + ",-40.6],[" + e + ",-40.6],[" + e + ",-40.58],[" +
           w + ",-40.58],[" + w + R"(,-40.6]]]})";
}

/// The planned load among two grounds, one of which is on the map: Patch, with its cell N in the west. 200 m³
/// were released there before.
struct TwoGrounds : Planned {
    Id patch, north;

    TwoGrounds() {
        small.season.harbour.epsg = 32760;
        Ground whole;
        whole.id = patch = small.id();
        whole.ground = "Patch";
        whole.geometry = box("179.62", "179.64");
        small.season.grounds.add(whole);
        Cell west;
        west.id = north = small.id();
        west.ground = patch;
        west.cell = "N";
        west.kind = "cell";
        west.geometry = box("179.62", "179.63");
        small.season.cells.add(west);
        for (const char* when : {"2025-11-01T10:00", "2025-11-02T10:00"})
            release(when, 100);
        planned.ground = Id{};
    }
    void release(const char* when, double in_situ_m3, const Id& tug = {}) {
        Load load;
        load.id = small.id();
        load.stated_in_situ_m3 = in_situ_m3;
        small.season.loads.add(load);
        Trip trip;
        trip.id = small.id();
        trip.load = load.id;
        trip.tug = tug;
        trip.release_end = small.at(when);
        trip.ground = patch;
        trip.cell = north;
        small.season.trips.add(trip);
    }
};

std::string term(double value, const std::string& more = "") {
    return R"({"measure":"in_situ_m3","window":{"kind":"term"},"value":)" + std::to_string(value) + more +
           "}";
}

/// The planned load with a condition that has two versions, the second from 20 November.
struct TwoVersions : Planned {
    void versions(const char* kind, const std::string& first, const std::string& second) {
        for (const auto* body : {&first, &second}) {
            Condition row;
            row.id = small.id();
            row.consent = small.consent;
            row.condition = "9";
            row.kind = kind;
            row.body = *body;
            (body == &first ? row.to : row.from) = small.at("2025-11-20T00:00");
            small.season.conditions.add(row);
        }
    }
};

}  // namespace

TEST_CASE("a position alone counts under the limits of the ground and the cell that it lies in", "[kept]") {
    // 200 of 250 used: with 100 more it is 300, by ground, by cell, and for each of them.
    for (const char* scope : {R"(,"applies":{"grounds":["Patch"]})", R"(,"applies":{"cells":["N"]})",
                              R"(,"each_of":"ground")", R"(,"each_of":"cell")"}) {
        CAPTURE(scope);
        TwoGrounds a;
        a.planned.lat = -40.59;
        a.planned.lon = 179.625;
        a.condition("quantity", term(250, scope));
        CHECK(a.verdict() == hold);
    }
    TwoGrounds east;  // of the same ground, not of the cell
    east.planned.lat = -40.59;
    east.planned.lon = 179.635;
    east.condition("quantity", term(250, R"(,"applies":{"cells":["N"]})"));
    CHECK(east.verdict() == clear);
}

TEST_CASE("a plan without a place is a doubt only where the limit has no room for it", "[kept]") {
    // 200 used and 100 more: 300 fit into 300, and not into 299.
    for (const auto& [limit, state] : {std::pair(300.0, clear), std::pair(299.0, untold)}) {
        TwoGrounds a;
        a.condition("quantity", term(limit, R"(,"applies":{"grounds":["Patch"]})"));
        CHECK(a.verdict() == state);
    }
}

TEST_CASE("a cell that is not said is one of the ground that is", "[kept]") {
    TwoGrounds a;  // 200 of 250 in N, which is Patch's
    a.condition("quantity", term(250, R"(,"applies":{"cells":["N"]})"));
    a.planned.ground = a.patch;
    CHECK(a.verdict() == untold);
    a.planned.ground = a.ground;
    CHECK(a.verdict() == clear);
}

TEST_CASE("a plan that says no cell is a doubt where any cell of a limit has no room", "[kept]") {
    TwoGrounds a;  // N holds 200: 300 of 250; the other cell of the limit has room, and is not chosen yet
    Cell other = *a.small.season.cells.find(a.north);
    other.id = a.small.id();
    other.cell = "S";
    a.small.season.cells.add(other);
    a.planned.ground = a.patch;
    a.condition("quantity", term(250, R"(,"applies":{"cells":["N","S"]},"each_of":"cell")"));
    CHECK(a.verdict() == untold);
}

TEST_CASE("a load that nobody can value is no less a doubt where its place is not said", "[kept]") {
    TwoGrounds a;  // by dips, of which the planned load has none: by that method it is not known
    a.condition("quantity", term(1000, R"(,"method":"ullage","applies":{"grounds":["Patch"]})"));
    CHECK(a.verdict() == untold);
}

TEST_CASE("what nobody recorded of a full load is a doubt under a limit that has no room for it", "[kept]") {
    TwoGrounds a;  // of the planned load no claim is recorded, and of the 200 released neither
    a.small.named(a.small.season.claims, &Claim::claim, "Q9");
    a.condition("quantity", term(300, R"(,"applies":{"claims":["Q9"]})"));
    CHECK(a.verdict() == clear);  // whatever it is from: 200 and 100 fit into 300
    a.condition("quantity", term(1, R"(,"applies":{"materials":["clay"]})"));
    CHECK(a.verdict() == clear);  // the planned load is sand
    a.condition("quantity", term(299, R"(,"applies":{"claims":["Q9"]})"));
    CHECK(a.verdict() == untold);
}

TEST_CASE("what was released before and may count is a doubt where the limit has no room for it", "[kept]") {
    for (const auto& [limit, state] : {std::pair(300.0, clear), {299.0, untold}, {99.0, hold}}) {
        TwoGrounds a;  // 200 of no recorded material, and 100 of sand planned
        a.condition("quantity", term(limit, R"(,"applies":{"materials":["sand"]})"));
        CHECK(a.verdict() == state);
        TwoGrounds each;
        each.condition("quantity", term(limit, R"(,"each_of":"material")"));
        CHECK(each.verdict() == state);
    }
}

TEST_CASE("a plan's tug is that of the load's last trip, and without one any", "[kept]") {
    TwoGrounds a;
    const Id skua = a.small.named(a.small.season.tugs, &Tug::name, "Skua");
    a.release("2025-11-02T12:00", 200, skua);
    a.condition("quantity", term(500, R"(,"applies":{"plant":["Skua"]})"));
    CHECK(a.verdict() == clear);  // 200, and 200 and the planned 100 of which no tug is recorded
    a.condition("quantity", term(250, R"(,"applies":{"plant":["Skua"]})"));
    CHECK(a.verdict() == untold);
    Trip trip;
    trip.id = a.small.id();
    trip.load = a.planned.load;
    trip.tug = skua;
    a.small.season.trips.add(trip);
    CHECK(a.verdict() == hold);  // 200 and 100 of 250
}

TEST_CASE("a load that was landed after the planned release was waiting full before it", "[kept]") {
    // 50 m³ wait since the 1st: 150 with the planned load, until they were landed.
    for (const auto& [landed, state] :
         {std::pair("2025-11-08T12:00", hold), std::pair("2025-11-02T12:00", clear)}) {
        Planned a;
        Load waiting;
        waiting.id = a.small.id();
        waiting.stated_in_situ_m3 = 50;
        waiting.loading_end = a.small.at("2025-11-01T06:00");
        a.small.season.loads.add(waiting);
        Trip trip;
        trip.id = a.small.id();
        trip.load = waiting.id;
        trip.outcome = "landed";
        trip.departed = a.small.at("2025-11-02T08:00");
        trip.returned = a.small.at(landed);
        a.small.season.trips.add(trip);
        a.condition("quantity", term(149));
        CHECK(a.verdict() == state);
    }
}

TEST_CASE("an overdue duty of a former version holds still, by one reason and until it is done", "[kept]") {
    TwoVersions a;
    // The third quarter was due by 6 October, under the first version; nobody did it.
    const std::string quarterly =
        R"({"what":"survey","when":{"cycle":"quarter"},"due":{"n":5,"unit":"days"},
            "nil_required":true,"blocks":["release"]})";
    a.small.released("2025-08-01T10:00", 1);
    a.versions("duty", quarterly, quarterly);
    for (const char* when :
         {"2025-11-03T10:00", "2025-11-19T23:59:59.999", "2025-11-20T00:00",
          "2026-01-20T10:00"}) {  // by the last the fourth is overdue too, under the second
        CAPTURE(when);
        a.planned.at = a.small.at(when);
        CHECK(a.verdict() == hold);
        CHECK(a.check().reasons.size() == 1);
        CHECK_FALSE(a.until());
    }
}

TEST_CASE("a duty is owed from the first release on, also where that was the load's own", "[kept]") {
    Planned a;  // one release, on 1 September, of the load itself: September's return was due by 2 October
    Trip trip;
    trip.id = a.small.id();
    trip.load = a.planned.load;
    trip.release_end = a.small.at("2025-09-01T10:00");
    a.small.season.trips.add(trip);
    a.condition("duty", R"({"what":"return","when":{"cycle":"month"},"due":{"n":1,"unit":"days"},
                            "nil_required":true,"blocks":["release"]})");
    CHECK(a.verdict() == hold);
}

TEST_CASE("a hold's end under the next version counts nothing that was released after the plan", "[kept]") {
    TwoVersions a;
    a.small.released("2025-11-02T10:00", 100);
    a.small.released("2025-11-10T10:00", 850);
    // 200 of 150, then 200 of 1000: with the later 850 the second version would hold too.
    a.versions("quantity", term(150), term(1000));
    CHECK(a.verdict() == hold);
    CHECK(a.until() == a.small.at("2025-11-20T00:00"));
}

TEST_CASE("a hold that would end as the next version begins is judged by that version", "[kept]") {
    // 60 and 100 of 120 a day until midnight, as which the next version takes over: the load alone is 100.
    for (const auto& [next, until] : {std::pair(100, "2025-11-20T00:00"), {99, ""}}) {
        TwoVersions a;
        a.planned.at = a.small.at("2025-11-19T10:00");
        a.small.released("2025-11-19T06:00", 60);
        const auto day = [](int most) {
            return R"({"measure":"in_situ_m3","window":{"kind":"calendar","unit":"day"},"value":)" +
                   std::to_string(most) + "}";
        };
        a.versions("quantity", day(120), day(next));
        CHECK(a.verdict() == hold);
        CHECK(a.until() == (*until == 0 ? std::nullopt : std::optional(a.small.at(until))));
    }
    TwoVersions by_clock;  // the night's end is the version's, and the next one forbids the whole day
    by_clock.planned.at = by_clock.small.at("2025-11-19T21:00");
    by_clock.versions("time", R"({"mode":"forbid","hours":["20:00..00:00"]})",
                      R"({"mode":"forbid","dates":["11-20"]})");
    CHECK(by_clock.verdict() == hold);
    CHECK(by_clock.until() == by_clock.small.at("2025-11-21T00:00"));
}

TEST_CASE("a load that waits for no said cell is a doubt in the cells of its own ground alone", "[kept]") {
    for (const bool is_there : {false, true}) {
        TwoGrounds a;  // 50 m³ wait, and 100 are planned for W, which takes 100
        a.planned.cell = a.cell_w;
        Load waiting;
        waiting.id = a.small.id();
        waiting.stated_in_situ_m3 = 50;
        waiting.loading_end = a.small.at("2025-11-03T08:00");
        a.small.season.loads.add(waiting);
        Trip trip;
        trip.id = a.small.id();
        trip.load = waiting.id;
        trip.ground = is_there ? a.ground : a.patch;
        a.small.season.trips.add(trip);
        a.condition("quantity", term(100, R"(,"each_of":"cell")"));
        CHECK(a.verdict() == (is_there ? untold : clear));
    }
}

TEST_CASE("what waited goes at the planned instant, however long the load itself is held", "[kept]") {
    TwoVersions a;
    Load waiting;
    waiting.id = a.small.id();
    waiting.stated_in_situ_m3 = 80;
    waiting.loading_end = a.small.at("2025-11-01T06:00");
    a.small.season.loads.add(waiting);
    // 180 of 90 in a week: as the second version begins, 2 weeks on, the 100 stand alone against 150.
    const auto week = [](int most) {
        return R"({"measure":"in_situ_m3","window":{"kind":"calendar","unit":"week"},"value":)" +
               std::to_string(most) + "}";
    };
    a.versions("quantity", week(90), week(150));
    CHECK(a.verdict() == hold);
    CHECK(a.until() == a.small.at("2025-11-20T00:00"));
}

TEST_CASE("a share's hold does not end by what was released after the plan", "[kept]") {
    const auto share = [](const char* most) {
        return std::string(R"({"measure":"in_situ_m3","each_of":"cell","window":{"kind":"term"},
            "share_of_total":)") +
               most + "}";
    };
    TwoVersions a;
    a.planned.cell = a.cell_w;
    a.small.released_at(a.small.at("2025-11-02T10:00"), 100, a.cell_e);
    a.small.released_at(a.small.at("2025-11-10T10:00"), 850, a.cell_e);
    // 100 of 200 is a half: over both. Of 1050, with the later 850, it would be a tenth.
    a.versions("quantity", share("0.2"), share("0.4"));
    CHECK(a.verdict() == hold);
    CHECK_FALSE(a.until());
}

TEST_CASE("a hold by the tide has no end where the tide is not known up to its version's end", "[kept]") {
    TwoVersions a;
    for (const char* when : {"2025-11-03T09:00", "2025-11-03T11:00"}) {
        Tide tide;
        tide.id = a.small.id();
        tide.time = a.small.at(when);
        tide.level_m = 1;
        a.small.season.tides.add(tide);
    }
    a.versions("time", R"({"mode":"allow","tide_level_m":{"max":0.25}})",
               R"({"mode":"forbid","hours":["20:00..06:00"]})");
    CHECK(a.verdict() == hold);
    CHECK_FALSE(a.until());
    // Of a rule that asks for Saturdays too it is known again on the last day, a Wednesday: not on a
    // Saturday.
    TwoVersions weekly;
    weekly.small.season.tides = a.small.season.tides;
    weekly.versions("time", R"({"mode":"allow","tide_level_m":{"max":0.25},"weekdays":["sat"]})",
                    R"({"mode":"forbid","hours":["20:00..06:00"]})");
    CHECK(weekly.verdict() == hold);
    CHECK_FALSE(weekly.until());
    TwoVersions known;  // of dates alone it is known: to the version's end, and the next one's night
    known.versions("time", R"({"mode":"forbid","dates":["11-01..12-31"]})",
                   R"({"mode":"forbid","hours":["20:00..06:00"]})");
    CHECK(known.until() == known.small.at("2025-11-20T06:00"));
}
