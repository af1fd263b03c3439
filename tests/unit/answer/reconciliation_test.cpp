// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/reconciliation.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "tests/unit/volume/a_season.h"

using namespace spoilbook;
using namespace spoilbook::test;
using Catch::Matchers::WithinAbs;

namespace {

/// One load of 40 general buckets of sand from C1 and 20 of clay from C2, and 1.5 m of ullage: 260 m³ in the
/// hopper. By n·C·f the sand is 144 of 208 parts. Both claims were surveyed on day 2 and day 6 of 1970.
struct TwoClaims {
    Season season;

    TwoClaims() {
        ASeason a;
        a.lines = {{in_c1, 40}, {in_c2, 20}};
        a.load.material = Id{};
        a.load.dips_m = {1.5, 1.5};
        season = a.made();
        Survey survey;
        survey.id = id(701);
        survey.survey = "S-1";
        survey.surveyed_on = "1970-01-02";
        season.surveys.add(survey);
        survey.id = id(702);
        survey.survey = "S-2";
        survey.surveyed_on = "1970-01-06";
        season.surveys.add(survey);
        removed(c1, 150, 8);
        removed(c2, 50, 4);
    }
    void removed(unsigned claim, double value, double u) {
        Removed row;
        row.id = id(static_cast<unsigned>(710 + season.removed.size()));
        row.removed = "R-" + std::to_string(season.removed.size() + 1);
        row.before = id(701);
        row.after = id(702);
        row.claim = id(claim);
        row.removed_in_situ_m3 = value;
        row.removed_u_m3 = u;
        season.removed.add(row);
    }
};

double shared_of(const Estimate& estimate, SourceId source) {
    for (const auto& part : estimate.shared) {
        if (part.source == source) return part.amount;
    }
    return 0;
}

}  // namespace

TEST_CASE("a load of two claims counts in each with its part, and its dips tie them together",
          "[reconciliation]") {
    const TwoClaims two;
    const Ledger ledger(two.season);
    const auto found = reconciliation(ledger, hours(400));
    REQUIRE(found.periods.size() == 2);
    const auto& sand_part = found.periods[0].loads;
    const auto& clay_part = found.periods[1].loads;
    CHECK_THAT(sand_part.hopper_m3.value, WithinAbs(260.0 * 144 / 208, 1e-9));
    CHECK_THAT(clay_part.hopper_m3.value, WithinAbs(260.0 * 64 / 208, 1e-9));
    // 2 cm on 120 m² of table: 2.4 m³ of the load, in one proportion in both claims, as one source.
    const auto own = static_cast<SourceId>(ledger.sources().size());
    CHECK_THAT(shared_of(sand_part.bulked_m3[0], own), WithinAbs(2.4 * 144 / 208, 1e-9));
    CHECK_THAT(shared_of(clay_part.bulked_m3[0], own), WithinAbs(2.4 * 64 / 208, 1e-9));
    CHECK(sand_part.bulked_m3[0].u_random == 0.0);
    // What ties them makes one group of both materials, each with the book's factor as its prior.
    REQUIRE(found.proposals.size() == 2);
    CHECK(found.proposals[0].dof == 2);
    CHECK(found.proposals[0].evidence == found.proposals[1].evidence);
}

TEST_CASE("a claim-period closes when the day of its second survey is over", "[reconciliation]") {
    const TwoClaims two;
    const Ledger ledger(two.season);
    CHECK(reconciliation(ledger, hours(6 * 24) - 1).periods.empty());
    CHECK(reconciliation(ledger, hours(6 * 24)).periods.size() == 2);
}

TEST_CASE("without a load between the surveys the barges say nothing came, which a survey may contradict",
          "[reconciliation]") {
    TwoClaims two;
    Season season = two.season;
    season.loads = {};
    season.tallies = {};
    const Ledger ledger(season);
    const auto found = reconciliation(ledger, hours(400));
    CHECK(found.periods[0].loads.loads == 0);
    CHECK(found.periods[0].held == Held::disagree);  // 150 m³ ± 8 are gone all the same
    CHECK(found.proposals.empty());
}

TEST_CASE("a load that cannot be valued leaves its claim-period open", "[reconciliation]") {
    TwoClaims two;
    Season season = two.season;
    season.materials = {};
    const Ledger ledger(season);
    const auto found = reconciliation(ledger, hours(400));
    CHECK(found.periods[0].held == Held::cannot_tell);
    CHECK(found.periods[0].loads.unknown == 1);
    CHECK(found.proposals.empty());
}
