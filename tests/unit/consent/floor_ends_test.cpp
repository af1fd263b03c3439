// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/floor_ends.h"

#include <catch2/catch.hpp>

#include "tests/unit/consent/support.h"

using namespace spoilbook;

namespace {

constexpr auto complied = Compliance::complied;
constexpr auto breached = Compliance::breached;
constexpr auto untold = Compliance::cannot_tell;

std::vector<FloorEnd> judged(const SmallSeason& small, const char* from, const char* to) {
    const Ledger ledger(small.season);
    const auto& condition = small.season.conditions.rows().back();
    const auto quantity = quantity_from(condition, small.season.zone);
    REQUIRE(quantity);
    return floors_ended(ledger, condition, *quantity, {small.at(from), small.at(to)}, small.at(to));
}

Compliance only(const std::vector<FloorEnd>& ends) {
    REQUIRE(ends.size() == 1);
    return ends.front().judged;
}

}  // namespace

TEST_CASE("a month's floor is judged once, as the month ends", "[floor]") {
    SmallSeason small;
    small.released("2025-10-31T23:59", 400);
    small.released("2025-11-01T00:00", 60);
    small.released("2025-11-30T23:59", 39);
    small.condition("9", R"({"op":"at_least","value":100,"window":{"kind":"calendar","unit":"month"}})");
    CHECK(judged(small, "2025-11-01T00:00", "2025-11-30T23:59").empty());
    const auto november = judged(small, "2025-11-01T00:00", "2025-12-01T00:00");
    CHECK(only(november) == breached);
    CHECK(november[0].window == "2025-11-01 to 2025-11-30");
    CHECK(november[0].why == "99 of 100 m³ in situ reached");
    const auto both = judged(small, "2025-10-01T00:00", "2025-12-01T00:00");
    REQUIRE(both.size() == 2);
    CHECK(both[0].judged == complied);
    small.released("2025-11-20T12:00", 1);
    CHECK(only(judged(small, "2025-11-01T00:00", "2025-12-01T00:00")) == complied);
}

TEST_CASE("a floor that a load without a volume may reach cannot be told", "[floor]") {
    SmallSeason small;
    small.released("2025-11-03T12:00", 99);
    small.released("2025-11-04T12:00", std::nullopt);
    small.condition("9", R"({"op":"at_least","value":100,"window":{"kind":"calendar","unit":"month"}})");
    CHECK(only(judged(small, "2025-11-01T00:00", "2025-12-01T00:00")) == untold);
}

TEST_CASE("a window that began before its condition did can be met and not missed", "[floor]") {
    SmallSeason small;
    small.released("2025-11-20T12:00", 99);
    small.condition("9", R"({"op":"at_least","value":100,"window":{"kind":"calendar","unit":"month"}})",
                    "2025-11-15T00:00");
    CHECK(only(judged(small, "2025-11-01T00:00", "2025-12-01T00:00")) == untold);
    CHECK(only(judged(small, "2025-12-01T00:00", "2026-01-01T00:00")) == breached);
    small.released("2025-11-21T12:00", 1);
    CHECK(only(judged(small, "2025-11-01T00:00", "2025-12-01T00:00")) == complied);
}

TEST_CASE("a later version takes the time of the first for its beginning", "[floor]") {
    SmallSeason small;
    small.condition("9", R"({"op":"at_least","value":50,"window":{"kind":"consent_year"}})",
                    "2024-01-01T00:00", "2025-06-01T00:00");
    small.condition("9", R"({"op":"at_least","value":80,"window":{"kind":"consent_year"}})",
                    "2025-06-01T00:00");
    CHECK(only(judged(small, "2025-12-01T00:00", "2026-01-01T00:00")) == breached);
}

TEST_CASE("the term ends as the consent expires, a phase as it says, and neither before", "[floor]") {
    SmallSeason small;
    Consent consent = small.season.consents.rows().front();
    consent.commences = small.at("2025-01-01T00:00");
    consent.expires = small.at("2026-02-11T00:00");
    small.season.consents = {};
    small.season.consents.add(consent);
    small.released("2025-11-03T12:00", 99);
    small.condition("9", R"({"op":"at_least","value":100,"window":{"kind":"term"}})");
    CHECK(judged(small, "2026-01-01T00:00", "2026-02-01T00:00").empty());
    CHECK(only(judged(small, "2026-02-01T00:00", "2026-03-01T00:00")) == breached);
    small.condition("10", R"({"op":"at_least","value":99,
        "window":{"kind":"phase","from":"2025-11-01T00:00","to":"2025-11-10T00:00"}})");
    CHECK(only(judged(small, "2025-11-01T00:00", "2025-12-01T00:00")) == complied);
    CHECK(judged(small, "2025-12-01T00:00", "2026-01-01T00:00").empty());
}

TEST_CASE("a campaign that ended within the time is judged, whatever began after it", "[floor]") {
    SmallSeason small;
    small.season.harbour.campaigns = R"([{"name":"spring","from":"2025-09-01","to":"2025-10-10"},
        {"name":"summer","from":"2025-10-05","to":"2026-01-10"}])";
    small.released("2025-10-07T12:00", 99);
    small.condition("9", R"({"op":"at_least","value":100,"window":{"kind":"campaign","name":"spring"}})");
    const auto october = judged(small, "2025-10-01T00:00", "2025-11-01T00:00");
    CHECK(only(october) == breached);
    CHECK(october[0].window == "2025-09-01 to 2025-10-09");
}

TEST_CASE("of a rolling window the one that ends with the time is judged", "[floor]") {
    SmallSeason small;
    small.released("2025-10-31T23:00", 100);
    small.condition("9", R"({"op":"at_least","value":100,"window":{"kind":"rolling","n":30,"unit":"days"}})");
    CHECK(only(judged(small, "2025-11-01T00:00", "2025-11-30T23:00")) == complied);
    CHECK(only(judged(small, "2025-11-01T00:00", "2025-11-30T23:00:00.001")) == breached);
}

TEST_CASE("each cell has its own floor, and each trip, with its last release", "[floor]") {
    SmallSeason small;
    const Id here = small.named(small.season.cells, &Cell::cell, "A1");
    const Id there = small.named(small.season.cells, &Cell::cell, "A2");
    small.released_at(small.at("2025-11-03T12:00"), 100, here);
    small.released_at(small.at("2025-11-04T12:00"), 99, there);
    small.condition("9", R"({"op":"at_least","value":100,"each_of":"cell",
        "window":{"kind":"calendar","unit":"month"}})");
    const auto cells = judged(small, "2025-11-01T00:00", "2025-12-01T00:00");
    REQUIRE(cells.size() == 2);
    CHECK(cells[0].judged == complied);
    CHECK(cells[1].judged == breached);
    CHECK(cells[1].member == "cell A2");
    small.condition("10", R"({"op":"at_least","value":100,"window":{"kind":"trip"}})");
    const auto trips = judged(small, "2025-11-01T00:00", "2025-12-01T00:00");
    REQUIRE(trips.size() == 2);
    CHECK(trips[0].judged == complied);
    CHECK(trips[1].judged == breached);
    CHECK(trips[1].window.rfind("trip T-", 0) == 0);
}

TEST_CASE("two trips that end in one millisecond have a floor each", "[floor]") {
    // Whichever of them stands first in the book: 100 is reached, 99 is not.
    for (const auto& [first, second] : {std::pair(100.0, 99.0), {99.0, 100.0}}) {
        SmallSeason small;
        const Instant both = small.at("2025-11-03T12:00");
        std::vector<std::string> names;
        for (const double amount : {first, second})
            names.push_back("trip " + small.season.trips.find(small.released_at(both, amount, Id{}))->trip);
        small.condition("10", R"({"op":"at_least","value":100,"window":{"kind":"trip"}})");
        const auto trips = judged(small, "2025-11-01T00:00", "2025-12-01T00:00");
        REQUIRE(trips.size() == 2);
        const auto& short_one = trips[0].window == names[first < 100 ? 0 : 1] ? trips[0] : trips[1];
        CHECK(short_one.judged == breached);
        CHECK(short_one.why == "99 of 100 m³ in situ reached");
        CHECK(std::count_if(trips.begin(), trips.end(),
                            [](const FloorEnd& end) { return end.judged == complied; }) == 1);
        CHECK(trips[0].window != trips[1].window);
    }
}
