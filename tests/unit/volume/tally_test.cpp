// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "tests/unit/volume/a_season.h"

using Catch::Matchers::WithinAbs;
using namespace spoilbook;
using namespace spoilbook::test;

TEST_CASE("buckets of one material give hopper, in-situ, wet and dry", "[tally]") {
    ASeason a;
    a.lines = {{in_c1, 50}};
    const Worked w(a);
    const MethodResult& tally = w.by(Method::tally);
    // By hand: 50 buckets of 4 m³ at 0.9 heap 180 m³; 180/1.25 = 144 m³ in place;
    // wet 144·(1.9 − 1.025) + 180·1.025 = 126 + 184.5; dry 126·2.65/1.625.
    CHECK_THAT(tally.hopper_m3->value, WithinAbs(180, 1e-9));
    CHECK_THAT(tally.in_situ_m3->value, WithinAbs(144, 1e-9));
    CHECK_THAT(tally.wet_t->value, WithinAbs(310.5, 1e-9));
    CHECK_THAT(tally.dry_t->value, WithinAbs(205.4769230769, 1e-9));
}

TEST_CASE("a tally's uncertainty is its fill and bulking factor, shared by all loads", "[tally]") {
    ASeason a;
    a.lines = {{in_c1, 50}};
    const Worked w(a);
    const MethodResult& tally = w.by(Method::tally);
    CHECK(tally.hopper_m3->u_random == 0);
    // 200 m³ rated · 0.03; in place 6/1.25, and 144 · 0.05/1.25 the other way.
    CHECK_THAT(w.shared(*tally.hopper_m3, "fill factor of sand, materials.csv"), WithinAbs(6, 1e-9));
    CHECK_THAT(w.shared(*tally.in_situ_m3, "fill factor of sand, materials.csv"), WithinAbs(4.8, 1e-9));
    CHECK_THAT(w.shared(*tally.in_situ_m3, "bulking factor of sand, materials.csv"), WithinAbs(-5.76, 1e-9));
    CHECK_THAT(tally.in_situ_m3->u(), WithinAbs(7.49784, 1e-5));
    CHECK(w.assumes(Method::tally, "bucket counts"));
}

TEST_CASE("part buckets and what was left in the hopper count", "[tally]") {
    ASeason a;
    a.lines = {{in_c1, 49, general, 0, 0.5}, {in_c1, std::nullopt, general, 0, 0.5}};
    a.load.left_before_m3 = 20;
    const Worked w(a);
    CHECK_THAT(w.by(Method::tally).hopper_m3->value, WithinAbs(200, 1e-9));
    CHECK_THAT(w.by(Method::tally).in_situ_m3->value, WithinAbs(160, 1e-9));
    CHECK(w.assumes(Method::tally, "left in the hopper"));
}

TEST_CASE("a line that lacks count, capacity or fill factor leaves the tally out, with the reason",
          "[tally]") {
    ASeason a;
    a.lines = {{in_c1, 50}, {in_c1, std::nullopt}};
    CHECK(Worked(a).figures.by(Method::tally) == nullptr);
    CHECK(Worked(a).why_not(Method::tally) == "a tally line has no count");
    a.lines = {{in_c1, 50, ripping}};
    a.ripping_m3.reset();
    CHECK(Worked(a).why_not(Method::tally) == "the capacity of a bucket is not recorded");
    a.lines = {{in_c1, 50}};
    a.materials[0].fill_factor.reset();
    CHECK(Worked(a).why_not(Method::tally) == "a fill factor is not recorded");
    a.lines = {{in_c1, 0}};
    CHECK(Worked(a).why_not(Method::tally) == "its tally lines count no bucket");
}

TEST_CASE("a load without tally lines has no tally, and that is no trouble", "[tally]") {
    const Worked w{ASeason{}};
    CHECK(w.figures.methods.empty());
    CHECK(w.figures.left_out.empty());
}

TEST_CASE("a line's material is its own, else the load's, else its claim's", "[tally]") {
    ASeason a;
    a.lines = {{in_c1, 50}};
    CHECK(Worked(a).figures.parts[0].material == id(sand));
    a.load.material = id(clay);
    CHECK(Worked(a).figures.parts[0].material == id(clay));
    a.lines[0].material = sand;
    CHECK(Worked(a).figures.parts[0].material == id(sand));
}

TEST_CASE("the factors are those in force when loading ended", "[tally]") {
    ASeason a;
    a.lines = {{in_c1, 50}};
    a.revise("fill", sand, hours(100), 1.0);
    CHECK_THAT(Worked(a).by(Method::tally).hopper_m3->value, WithinAbs(200, 1e-9));
    a.load.loading_end.reset();  // then when it began
    CHECK_THAT(Worked(a).by(Method::tally).hopper_m3->value, WithinAbs(180, 1e-9));
    a.load.loading_start = hours(101);
    CHECK_THAT(Worked(a).by(Method::tally).hopper_m3->value, WithinAbs(200, 1e-9));
    a.load.loading_start.reset();  // then as the book began
    CHECK_THAT(Worked(a).by(Method::tally).hopper_m3->value, WithinAbs(180, 1e-9));
}

TEST_CASE("a missing bulking factor leaves the hopper volume alone", "[tally]") {
    ASeason a;
    a.lines = {{in_c1, 50}};
    a.materials[0].bulking_factor.reset();
    const Worked w(a);
    CHECK(w.by(Method::tally).hopper_m3);
    CHECK_FALSE(w.by(Method::tally).in_situ_m3);
    CHECK_FALSE(w.by(Method::tally).wet_t);
    CHECK_FALSE(w.by(Method::tally).dry_t);
    CHECK(w.assumes(Method::tally, "a bulking factor is not recorded"));
}

TEST_CASE("missing densities leave the volumes", "[tally]") {
    ASeason a;
    a.lines = {{in_c1, 50}};
    a.materials[0].grain_density_t_m3.reset();
    CHECK(Worked(a).by(Method::tally).wet_t);
    CHECK_FALSE(Worked(a).by(Method::tally).dry_t);
    a.materials[0].situ_density_t_m3.reset();
    CHECK(Worked(a).by(Method::tally).in_situ_m3);
    CHECK_FALSE(Worked(a).by(Method::tally).wet_t);
}

TEST_CASE("bank volume of a bucket load is heaped capacity times fill times load factor", "[tally]") {
    // BF-28, SEEN: Nunnally example: 3.82 m³ loose · 0.9 · load factor 0.8 = 2.75 bank m³; load factor = 1/B
    ASeason a;
    a.general_m3 = 3.82;
    a.materials[0].bulking_factor = 1.25;
    a.lines = {{in_c1, 1}};
    CHECK_THAT(Worked(a).by(Method::tally).in_situ_m3->value, WithinAbs(2.75, 0.005));
}

TEST_CASE("a heaped bucket holds more than its rating in mixed ground", "[tally]") {
    // BF-27, SEEN: Caterpillar Performance Handbook ed. 47 p. 18-30: 4.2 rated · 1.15 = 4.83
    ASeason a;
    a.general_m3 = 4.2;
    a.materials[0].fill_factor = 1.15;
    a.lines = {{in_c1, 1}};
    CHECK_THAT(Worked(a).by(Method::tally).hopper_m3->value, WithinAbs(4.83, 0.005));
}

TEST_CASE(
    "water that was read on the spoil is added to what the buckets weigh, whatever the dips say of the spoil",
    "[tally]") {
    ASeason a;
    a.lines = {{in_c1, 50}};
    a.load.dips_m = {1.4, 1.4};   // 272 m³ by dips, 180 by buckets
    a.load.water_on_top_m = 0.1;  // 12 m³: 12.3 t on the 310.5 t
    CHECK_THAT(Worked(a).by(Method::tally).wet_t->value, WithinAbs(322.8, 1e-9));
}
