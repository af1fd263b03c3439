// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "tests/unit/volume/a_season.h"

using Catch::Matchers::WithinAbs;
using namespace spoilbook;
using namespace spoilbook::test;

TEST_CASE("a load of two claims is split by heap, in place by heap over bulking", "[split]") {
    ASeason a;
    a.lines = {{in_c1, 50}, {in_c2, 50, ripping}};
    const Worked w(a);
    const auto& parts = w.figures.parts;
    REQUIRE(parts.size() == 2);
    // By hand: sand 50·4·0.9 = 180, clay 50·2.5·0.8 = 100; in place 180/1.25 = 144, 100/1.4 = 71.43
    CHECK(parts[0].claim == id(c1));
    CHECK(parts[1].material == id(clay));
    CHECK_THAT(parts[0].hopper_share, WithinAbs(180.0 / 280, 1e-12));
    CHECK_THAT(*parts[0].in_situ_share, WithinAbs(144 / 215.4285714286, 1e-9));
    const MethodResult& tally = w.by(Method::tally);
    CHECK_THAT(tally.in_situ_m3->value, WithinAbs(215.4285714286, 1e-9));
    CHECK_THAT(tally.part(0).in_situ_m3->value, WithinAbs(144, 1e-9));
    CHECK_THAT(tally.part(1).hopper_m3->value, WithinAbs(100, 1e-9));
    // Nothing of the clay's factors hangs on the sand's part.
    CHECK(w.shared(*tally.part(0).in_situ_m3, "bulking factor of clay, materials.csv") == 0);
    CHECK_THAT(w.shared(*tally.part(0).in_situ_m3, "fill factor of sand, materials.csv"),
               WithinAbs(4.8, 1e-9));
}

TEST_CASE("by dips, a fill factor has a say in the split alone", "[split]") {
    ASeason a;
    a.barge.ullage_u_m = 0;
    a.load.dips_m = {1.4};  // 320 − 0.4·120 = 272 m³
    a.lines = {{in_c1, 50}, {in_c2, 50, ripping}};
    const Worked w(a);
    const MethodResult& ullage = w.by(Method::ullage);
    CHECK_THAT(ullage.hopper_m3->value, WithinAbs(272, 1e-9));
    CHECK(ullage.hopper_m3->shared.empty());
    // 272·(180/1.25 + 100/1.4)/280; by hand a sand fill factor of 0.93 instead makes it
    // 272·(186/1.25 + 100/1.4)/286 = 209.4425…, of 0.87 209.08…: some 0.18 either way.
    CHECK_THAT(ullage.in_situ_m3->value, WithinAbs(209.2734694, 1e-6));
    CHECK_THAT(w.shared(*ullage.in_situ_m3, "fill factor of sand, materials.csv"), WithinAbs(0.179, 0.002));
    CHECK_THAT(together(*ullage.part(0).hopper_m3, *ullage.part(1).hopper_m3).value, WithinAbs(272, 1e-9));
}

TEST_CASE("lines of one claim and material are one part, whatever their buckets", "[split]") {
    ASeason a;
    a.lines = {{in_c1, 10}, {in_c1, 10, ripping}, {in_c2, 5}, {in_c1, 3}};
    const Worked w(a);
    REQUIRE(w.figures.parts.size() == 2);
    CHECK_THAT(w.figures.parts[0].hopper_share + w.figures.parts[1].hopper_share, WithinAbs(1, 1e-12));
}

TEST_CASE("two claims of one material are split alike in the hopper and in place, whatever its bulking",
          "[split]") {
    ASeason a;
    a.load.material = id(sand);
    a.lines = {{in_c1, 30}, {in_c2, 10}};
    a.materials[0].bulking_factor.reset();
    const Worked w(a);
    CHECK_THAT(*w.figures.parts[1].in_situ_share, WithinAbs(0.25, 1e-12));
    CHECK_THAT(w.figures.parts[1].hopper_share, WithinAbs(0.25, 1e-12));
}

TEST_CASE("without a capacity the split falls back on plain counts and says so", "[split]") {
    ASeason a;
    a.ripping_m3.reset();
    a.load.dips_m = {1.4, 1.4};
    a.lines = {{in_c1, 30}, {in_c2, 10, ripping}};
    const Worked w(a);
    CHECK_THAT(w.figures.parts[0].hopper_share, WithinAbs(0.75, 1e-12));
    CHECK(w.assumes(Method::ullage, "plain bucket counts"));
}

TEST_CASE("without a count a mixed load stays whole, of no claim, and says so", "[split]") {
    ASeason a;
    a.load.dips_m = {1.4, 1.4};
    a.load.material = id(clay);
    a.lines = {{in_c1, 30}, {in_c2, std::nullopt}};
    const Worked w(a);
    REQUIRE(w.figures.parts.size() == 1);
    CHECK(w.figures.parts[0].claim.is_nil());
    CHECK(w.figures.parts[0].material == id(clay));
    CHECK(w.assumes(Method::ullage, "not split over claims"));
}

TEST_CASE("without a count the one claim of all lines takes all", "[split]") {
    ASeason a;
    a.load.dips_m = {1.4, 1.4};
    a.lines = {{in_c1, 30}, {in_c1, std::nullopt}};
    const Worked w(a);
    REQUIRE(w.figures.parts.size() == 1);
    CHECK(w.figures.parts[0].claim == id(c1));
    CHECK(w.figures.parts[0].hopper_share == 1);
}

TEST_CASE("a line of no buckets brings nothing and asks for nothing", "[split]") {
    ASeason a;
    a.ripping_m3.reset();
    a.lines = {{in_c1, 50}, {in_c2, 0, ripping}};
    const Worked w(a);
    REQUIRE(w.figures.parts.size() == 1);
    CHECK(w.figures.parts[0].claim == id(c1));
    CHECK_THAT(w.by(Method::tally).hopper_m3->value, WithinAbs(180, 1e-9));
}

TEST_CASE("a tally line without a station belongs to no claim", "[split]") {
    ASeason a;
    a.load.material = id(sand);
    a.lines = {{0, 50}};
    CHECK(Worked(a).figures.parts[0].claim.is_nil());
    CHECK(Worked(a).by(Method::tally).in_situ_m3);
}

TEST_CASE("where one of two materials has no bulking factor nothing in place is known", "[split]") {
    ASeason a;
    a.materials[1].bulking_factor.reset();
    a.lines = {{in_c1, 50}, {in_c2, 50}};
    const Worked w(a);
    CHECK_FALSE(w.figures.parts[0].in_situ_share);
    CHECK_FALSE(w.by(Method::tally).in_situ_m3);
    CHECK(w.by(Method::tally).hopper_m3);
}

TEST_CASE("what was left in the hopper before was not dredged for this load", "[split]") {
    ASeason a;
    a.lines = {{in_c1, 50}, {in_c2, 50, ripping}};
    a.load.left_before_m3 = 28;  // a tenth on top of 180 and 100
    const Worked w(a);
    const MethodResult& tally = w.by(Method::tally);
    CHECK_THAT(tally.hopper_m3->value, WithinAbs(308, 1e-9));
    CHECK_THAT(tally.part(0).in_situ_m3->value, WithinAbs(144 * 1.1, 1e-9));
    CHECK_THAT(tally.dredged(0).hopper_m3->value, WithinAbs(180, 1e-9));
    CHECK_THAT(tally.dredged(0).in_situ_m3->value, WithinAbs(144, 1e-9));
    CHECK_THAT(tally.dredged(1).in_situ_m3->value, WithinAbs(71.4285714286, 1e-9));
    // As sure as if the hopper had been empty.
    a.load.left_before_m3.reset();
    const Worked empty(a);
    CHECK_THAT(tally.dredged(1).in_situ_m3->u(),
               WithinAbs(empty.by(Method::tally).part(1).in_situ_m3->u(), 1e-9));
    CHECK_THAT(tally.dredged(0).dry_t->value,
               WithinAbs(empty.by(Method::tally).dredged(0).dry_t->value, 1e-9));
}
