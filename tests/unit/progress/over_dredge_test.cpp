// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/over_dredge.h"

#include <catch2/catch.hpp>

#include "model/unit/time_text.h"

using namespace spoilbook;
using Catch::Matchers::WithinAbs;

namespace {

/// Two claims, and surveys on days that a test names.
class Reported {
 public:
    Reported() {
        season.zone = *Zone::named("Pacific/Auckland");
        for (const char* name : {"Q1", "Q2"}) {
            Claim claim;
            claim.id = id();
            claim.claim = name;
            season.claims.add(claim);
        }
    }

    /// A report between two surveys, the later one on that day; answers the row, to be filled and added.
    Removed report(const char* label, int claim, const char* before_day, const char* after_day) {
        Removed row;
        row.id = id();
        row.removed = label;
        row.claim = season.claims.rows()[static_cast<std::size_t>(claim)].id;
        row.before = survey_on(before_day);
        row.after = survey_on(after_day);
        return row;
    }
    Id survey_on(const char* day) {
        Survey survey;
        survey.id = id();
        survey.surveyed_on = day;
        season.surveys.add(survey);
        return survey.id;
    }
    OverDredged at(const char* when) { return over_dredge(season, *parse_instant(when, season.zone)); }

    Season season;

 private:
    Id id() {
        Id fresh;
        fresh.bytes[15] = ++last_;
        fresh.bytes[0] = 1;
        return fresh;
    }
    std::uint8_t last_ = 0;
};

}  // namespace

TEST_CASE("over-dredge of a claim is what its reports say, and its uncertainties add up one for one",
          "[over-dredge]") {
    Reported here;
    auto first = here.report("RM-1", 0, "2025-08-01", "2025-10-05");
    first.removed_in_situ_m3 = 900;
    first.within_allowance_m3 = 30;
    first.within_allowance_u_m3 = 4;
    auto second = here.report("RM-2", 0, "2025-10-05", "2025-11-07");
    second.removed_in_situ_m3 = 1100;
    second.within_allowance_m3 = 50;
    second.within_allowance_u_m3 = 6;
    second.beyond_allowance_m3 = 20;
    second.beyond_allowance_u_m3 = 5;
    here.season.removed.add(first);
    here.season.removed.add(second);

    CHECK(here.at("2025-10-05T23:59:59.999").claims.empty());
    const auto early = here.at("2025-10-06T00:00");
    REQUIRE(early.claims.size() == 1);
    CHECK(early.all.reports == std::vector<std::string>{"RM-1"});
    CHECK_FALSE(early.all.beyond);  // no report of it is not nothing of it

    const auto made = here.at("2026-01-01T00:00");
    REQUIRE(made.claims.size() == 1);
    const auto& claim = made.claims.front();
    CHECK(claim.claim->claim == "Q1");
    CHECK_THAT(claim.within->value, WithinAbs(80, 1e-9));
    CHECK_THAT(claim.within->u, WithinAbs(10, 1e-9));
    CHECK_THAT(claim.below_target()->value, WithinAbs(100, 1e-9));
    CHECK_THAT(claim.below_target()->u, WithinAbs(15, 1e-9));
    CHECK_THAT(*claim.share(), WithinAbs(0.05, 1e-12));
    const auto paid = claim.cost(21.5);
    REQUIRE(paid);
    CHECK_THAT(paid->value, WithinAbs(2150, 1e-9));
    CHECK_THAT(paid->u, WithinAbs(322.5, 1e-9));
    CHECK_FALSE(claim.cost(std::nullopt));
    CHECK(claim.assumed.size() == 1);  // the first does not tell what lay beyond
}

TEST_CASE("what two shorter reports cover is not counted once more", "[over-dredge]") {
    Reported here;
    int m3 = 100;
    for (const auto& [label, before, after] :
         {std::tuple("RM-3", "2025-08-01", "2025-11-07"), std::tuple("RM-1", "2025-08-01", "2025-10-05"),
          std::tuple("RM-2", "2025-10-05", "2025-11-07")}) {
        auto row = here.report(label, 0, before, after);
        row.within_allowance_m3 = m3;
        row.beyond_allowance_m3 = 0;
        m3 = m3 == 100 ? 60 : 40;
        here.season.removed.add(row);
    }
    auto other = here.report("RM-4", 1, "2025-08-01", "2025-11-07");  // of another claim
    other.within_allowance_m3 = 5;
    here.season.removed.add(other);
    const auto made = here.at("2026-01-01T00:00");
    CHECK(made.claims.at(0).reports == std::vector<std::string>{"RM-1", "RM-2"});
    CHECK_THAT(made.claims[0].below_target()->value, WithinAbs(100, 1e-9));
    CHECK_THAT(made.all.below_target()->value, WithinAbs(105, 1e-9));
    CHECK(made.left_out == std::vector<std::string>{"RM-3"});
    // Before the second survey of the three the first half is all that is told.
    CHECK_THAT(here.at("2025-10-10T00:00").all.below_target()->value, WithinAbs(60, 1e-9));
}

TEST_CASE("all claims together are their sum, and what no report gives is said", "[over-dredge]") {
    Reported here;
    auto one = here.report("RM-1", 0, "2025-08-01", "2025-10-05");
    one.within_allowance_m3 = 30;  // how much was removed, and a u, nobody wrote
    auto other = here.report("RM-2", 1, "2025-08-01", "2025-10-05");
    other.beyond_allowance_m3 = 12;
    other.beyond_allowance_u_m3 = 3;
    other.removed_in_situ_m3 = 500;
    auto silent = here.report("RM-3", 1, "2025-08-01", "2025-10-05");
    silent.removed_in_situ_m3 = 700;
    for (const auto& row : {one, other, silent})
        here.season.removed.add(row);
    const auto made = here.at("2026-01-01T00:00");
    REQUIRE(made.claims.size() == 2);
    CHECK(made.claims[0].assumed.size() == 2);  // no u, and nothing of what lay beyond
    CHECK_FALSE(made.claims[0].share());
    CHECK_THAT(*made.claims[1].share(), WithinAbs(12.0 / 500, 1e-12));
    CHECK(made.all.reports == std::vector<std::string>{"RM-1", "RM-2"});
    CHECK_THAT(made.all.below_target()->value, WithinAbs(42, 1e-9));
    CHECK_FALSE(made.all.share());
    CHECK(here.at("2025-01-01T00:00").all.below_target() == std::nullopt);
}
