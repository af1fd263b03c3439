// SPDX-License-Identifier: GPL-3.0-or-later
// What is not recorded of a load and decides whether it counts under a limit: told beside what is used.
#include <catch2/catch.hpp>

#include "model/consent/floor_ends.h"
#include "support.h"

using namespace spoilbook;

namespace {

/// 100 m³ of sand, and 40 m³ of which nobody recorded the material, in November.
struct Unsaid : SmallSeason {
    Id sand;

    Unsaid() {
        sand = named(season.materials, &Material::material, "sand");
        named(season.materials, &Material::material, "clay");
        load("2025-11-02T10:00", 100, sand);
        load("2025-11-03T10:00", 40, Id{});
    }
    void load(const char* when, double in_situ_m3, const Id& material) {
        Load row;
        row.id = id();
        row.material = material;
        row.stated_in_situ_m3 = in_situ_m3;
        season.loads.add(row);
        Trip trip;
        trip.id = id();
        trip.load = row.id;
        trip.release_end = at(when);
        season.trips.add(trip);
    }
    LimitState limit(const std::string& members) {
        season.conditions = {};
        const std::string body =
            R"({"measure":"in_situ_m3","window":{"kind":"calendar","unit":"month"},)" + members + "}";
        condition("9", body.c_str());
        return limits("2025-11-20T00:00").at(0);
    }
};

}  // namespace

TEST_CASE("a load whose material is not recorded may count: what is used then is told", "[limit]") {
    Unsaid book;
    for (const char* about : {R"("applies":{"materials":["sand"]})", R"("each_of":"material")"}) {
        const auto state = book.limit(std::string(R"("value":130,)") + about);
        CHECK(state.used == 100);
        CHECK(state.not_recorded == 1);
        CHECK(state.used_at_most == 140);
        CHECK(state.hangs_on_records());
        CHECK_FALSE(book.limit(std::string(R"("value":140,)") + about).hangs_on_records());
        CHECK_FALSE(book.limit(std::string(R"("value":99,)") + about).hangs_on_records());
    }
    const auto all = book.limit(R"("value":130)");
    CHECK(all.used == 140);
    CHECK(all.not_recorded == 0);
    CHECK_FALSE(all.used_at_most.has_value());
}

TEST_CASE("a floor that what is not recorded may reach cannot be told", "[limit][floor]") {
    for (const auto& [value, state] : {std::pair("100", Compliance::complied),
                                       {"140", Compliance::cannot_tell},
                                       {"141", Compliance::breached}}) {
        Unsaid book;
        book.limit(std::string(R"("op":"at_least","applies":{"materials":["sand"]},"value":)") + value);
        const Ledger ledger(book.season);
        const auto& condition = book.season.conditions.rows().front();
        const auto quantity = quantity_from(condition, book.season.zone);
        const auto ends = floors_ended(ledger, condition, *quantity,
                                       {book.at("2025-11-01T00:00"), book.at("2025-12-01T00:00")},
                                       book.at("2025-12-01T00:00"));
        REQUIRE(ends.size() == 1);
        CHECK(ends[0].judged == state);
    }
}
