// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "model/consent/first_over.h"
#include "support.h"

using namespace spoilbook;
using Catch::Matchers::WithinAbs;

TEST_CASE("a release at midnight of the month's end belongs to the new month", "[limit]") {
    SmallSeason small;
    small.released("2025-10-31T23:59:59.999", 100);
    small.released("2025-11-01T00:00", 30);
    small.condition("5",
                    R"({"measure":"in_situ_m3","value":1000,"window":{"kind":"calendar","unit":"month"}})");
    CHECK_THAT(small.limits("2025-10-31T23:59:59.999")[0].used, WithinAbs(100, 1e-9));
    CHECK_THAT(small.limits("2025-11-01T00:00")[0].used, WithinAbs(30, 1e-9));
}

TEST_CASE("a release exactly on the as-at counts, one a millisecond later does not", "[limit]") {
    SmallSeason small;
    small.released("2025-11-03T10:00", 70);
    small.condition("3", R"({"measure":"in_situ_m3","value":1000,"window":{"kind":"term"}})");
    CHECK_THAT(small.limits("2025-11-03T10:00")[0].used, WithinAbs(70, 1e-9));
    CHECK_THAT(small.limits("2025-11-03T09:59:59.999")[0].used, WithinAbs(0, 1e-9));
}

TEST_CASE("rolling months are calendar months with clamping, not 30 or 365 days", "[limit]") {
    SmallSeason small;
    small.released("2023-02-28T12:00", 10);        // on the clamped edge: out
    small.released("2023-02-28T12:00:00.001", 1);  // just inside
    small.condition(
        "4", R"({"measure":"in_situ_m3","value":1000,"window":{"kind":"rolling","n":12,"unit":"months"}})");
    CHECK_THAT(small.limits("2024-02-29T12:00")[0].used, WithinAbs(1, 1e-9));
}

TEST_CASE("a limit met to the last litre was never exceeded, and one litre more is", "[limit]") {
    SmallSeason small;
    for (int i = 0; i < 10; ++i)
        small.released("2025-11-03T10:00", 0.1);
    small.condition("3", R"({"measure":"in_situ_m3","value":1.0,"window":{"kind":"term"}})");
    CHECK(!small.limits("2025-12-01T00:00")[0].first_over);
    small.released("2025-11-04T10:00", 0.001);
    CHECK(small.limits("2025-12-01T00:00")[0].first_over == small.at("2025-11-04T10:00"));
}

TEST_CASE("a late entry in the past re-opens the later windows it falls in, and only those", "[limit]") {
    SmallSeason small;
    small.released("2025-08-10T10:00", 60);
    small.released("2025-09-20T10:00", 60);
    small.condition(
        "4", R"({"measure":"in_situ_m3","value":100,"window":{"kind":"rolling","n":30,"unit":"days"}})");
    CHECK(!small.limits("2026-01-01T00:00")[0].first_over);
    small.released("2025-09-01T10:00", 60);  // logged last, released between the two
    CHECK(small.limits("2026-01-01T00:00")[0].first_over == small.at("2025-09-01T10:00"));
}

TEST_CASE("unknown is not zero: a load that nobody can value leaves the chance open", "[limit]") {
    SmallSeason small;
    small.released("2025-11-03T10:00", 70);
    small.released("2025-11-03T14:00", std::nullopt);
    small.condition("3", R"({"measure":"in_situ_m3","value":1000,"window":{"kind":"term"}})");
    const auto limit = small.limits("2025-11-04T00:00")[0];
    CHECK(limit.unknown == 1);
    CHECK(!limit.p_over);
}

TEST_CASE("the version in force at a release judges it", "[limit]") {
    SmallSeason small;
    small.released("2025-10-10T10:00", 90);
    small.released("2025-11-10T10:00", 90);
    small.condition("5", R"({"value":100,"window":{"kind":"calendar","unit":"month"}})", "",
                    "2025-11-01T00:00");
    small.condition("5", R"({"value":80,"window":{"kind":"calendar","unit":"month"}})", "2025-11-01T00:00");
    const auto limits = small.limits("2025-12-01T00:00");
    REQUIRE(limits.size() == 1);
    CHECK(limits[0].limit == 80.0);
    CHECK(limits[0].first_over == small.at("2025-11-10T10:00"));
}

TEST_CASE("an opening amount counts once, at the end of its span, and always in the term", "[limit]") {
    SmallSeason small;
    Opening opening;
    opening.id = small.id();
    opening.consent = small.consent;
    opening.condition = "3";
    opening.from = small.at("2025-06-01T00:00");
    opening.to = small.at("2025-07-01T00:00");
    opening.value = 500;
    small.season.openings.add(opening);
    small.condition("3", R"({"value":1000,"window":{"kind":"consent_year"}})");
    CHECK_THAT(small.limits("2025-06-30T23:59:59.998")[0].used, WithinAbs(0, 1e-9));
    CHECK_THAT(small.limits("2025-06-30T23:59:59.999")[0].used, WithinAbs(500, 1e-9));
    CHECK_THAT(small.limits("2026-02-01T00:00")[0].used, WithinAbs(0, 1e-9));
}

TEST_CASE("a floor is never exceeded", "[limit]") {
    SmallSeason small;
    small.released("2025-11-03T10:00", 700);
    small.condition("9", R"({"op":"at_least","value":100,"window":{"kind":"term"}})");
    CHECK(!small.limits("2025-12-01T00:00")[0].first_over);
}

TEST_CASE("a reserve is not there until it is unlocked", "[limit]") {
    SmallSeason small;
    small.condition(
        "9",
        R"({"value":100,"window":{"kind":"term"},"reserve":{"value":20,"unlocked_by":{"on":"2025-12-01"}}})");
    CHECK(small.limits("2025-11-30T23:59:59.999")[0].limit == 80.0);
    CHECK(small.limits("2025-12-01T00:00")[0].limit == 100.0);
}

TEST_CASE("trips count as trips, on the local day of their release", "[limit]") {
    SmallSeason small;
    small.released("2025-09-28T23:30", 1);  // a day of 23 hours
    small.released("2025-09-28T00:10", 1);
    small.released("2025-09-27T23:50", 1);
    small.condition("7", R"({"measure":"trips","value":1,"window":{"kind":"calendar","unit":"day"}})");
    const auto limit = small.limits("2025-09-28T23:59")[0];
    CHECK_THAT(limit.used, WithinAbs(2, 1e-9));
    CHECK(limit.first_over == small.at("2025-09-28T23:30"));
}

TEST_CASE("a release at the very end of a phase is no longer in it", "[limit]") {
    SmallSeason small;
    small.released("2025-11-30T23:59:59.999", 70);
    small.released("2025-12-01T00:00", 70);
    small.condition(
        "13", R"({"value":100,"window":{"kind":"phase","from":"2025-11-01T00:00","to":"2025-12-01T00:00"}})");
    const auto limit = small.limits("2025-12-01T00:00")[0];
    CHECK_THAT(limit.used, WithinAbs(70, 1e-9));
    CHECK(!limit.first_over);
}

TEST_CASE("what left a month's window comes back where the next day's window begins earlier", "[limit]") {
    SmallSeason small;
    small.released("2025-02-28T09:00", 60);
    small.released("2025-03-30T10:00", 10);  // its window begins on 28 February at 10:00
    small.released("2025-03-31T08:00", 40);  // and this one's at 08:00: 60 + 10 + 40
    small.condition("4", R"({"value":100,"window":{"kind":"rolling","n":1,"unit":"months"}})");
    const auto limit = small.limits("2025-04-20T00:00")[0];
    CHECK(limit.first_over == small.at("2025-03-31T08:00"));
}

TEST_CASE("a limit passed in September and again in November was first passed from November on in November",
          "[limit]") {
    SmallSeason small;
    for (const char* when : {"2025-09-10T08:00", "2025-09-10T12:00", "2025-11-12T08:00", "2025-11-12T12:00"})
        small.released(when, 10);
    small.condition("7", R"({"measure":"trips","value":1,"window":{"kind":"calendar","unit":"day"}})");
    const Ledger ledger(small.season);
    const auto& condition = small.season.conditions.rows().front();
    const Instant as_at = small.at("2025-12-01T00:00");
    CHECK(first_overs(ledger, condition, as_at).at(Id{}) == small.at("2025-09-10T12:00"));
    CHECK(first_overs(ledger, condition, as_at, small.at("2025-11-01T00:00")).at(Id{}) ==
          small.at("2025-11-12T12:00"));
    CHECK(first_overs(ledger, condition, as_at, small.at("2025-11-13T00:00")).empty());
}

TEST_CASE("cells of one name in two grounds are two cells, in what is used and in what was passed",
          "[limit]") {
    SmallSeason small;
    std::vector<Id> cells;
    for (const char* name : {"Gull", "Tern"}) {
        Ground ground;
        ground.id = small.id();
        ground.ground = name;
        small.season.grounds.add(ground);
        Cell cell;
        cell.id = small.id();
        cell.cell = "A1";
        cell.ground = ground.id;
        small.season.cells.add(cell);
        cells.push_back(cell.id);
    }
    small.released_at(small.at("2025-11-03T10:00"), 120, cells[1]);
    Opening opening;
    opening.id = small.id();
    opening.consent = small.consent;
    opening.condition = "12";
    opening.to = small.at("2025-10-01T00:00");
    opening.value = 50;
    opening.member = "Gull/A1";
    small.season.openings.add(opening);
    opening.id = small.id();
    opening.member = "A1";  // which of them is not said
    opening.value = 7;
    small.season.openings.add(opening);
    small.condition("12", R"({"value":100,"each_of":"cell","window":{"kind":"term"}})");
    const auto limits = small.limits("2025-12-01T00:00");
    REQUIRE(limits.size() == 3);
    CHECK(limits[0].member->name == "Gull/A1");
    CHECK_THAT(limits[0].used, WithinAbs(50, 1e-9));
    CHECK(!limits[0].first_over);
    CHECK(limits[1].member->name == "Tern/A1");
    CHECK_THAT(limits[1].used, WithinAbs(120, 1e-9));
    CHECK(limits[1].first_over == small.at("2025-11-03T10:00"));
    CHECK(limits[2].member->name.empty());
    CHECK_THAT(limits[2].used, WithinAbs(7, 1e-9));
}

TEST_CASE("while a mean's years are few, a share of a stated volume has its other reading too", "[limit]") {
    SmallSeason small;
    Consent consent;
    consent.id = small.id();
    consent.commences = small.at("2025-10-01T00:00");
    small.season.consents.add(consent);
    small.consent = consent.id;
    small.released("2025-11-03T10:00", 60);
    small.condition("12", R"({"share_of_total":0.15,"of":200,"window":{"kind":"mean","years":3}})");
    const auto limit = small.limits("2025-12-01T00:00")[0];
    CHECK_THAT(limit.used, WithinAbs(0.1, 1e-12));              // 60 / 3 of 200
    CHECK_THAT(*limit.used_over_years, WithinAbs(0.3, 1e-12));  // 60 / 1 of 200
}
