// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "tests/unit/volume/a_season.h"

using Catch::Matchers::WithinAbs;
using namespace spoilbook;
using namespace spoilbook::test;

namespace {

/// Even keel light at 1 m (420 t), full at 2 m (880 t), dips at 1.4 m (272 m³).
ASeason drawn() {
    ASeason a;
    a.load.material = id(sand);
    a.load.light_draughts_m = std::vector<double>(6, 1.0);
    a.load.full_draughts_m = std::vector<double>(6, 2.0);
    a.load.light_density_t_m3 = a.load.dock_density_t_m3 = 1.025;
    a.load.dips_m = {1.4, 1.4};
    return a;
}

LightReading light_reading(unsigned n, Instant at, double draught) {
    LightReading reading;
    reading.id = id(n);
    reading.barge = id(teal);
    reading.time = at;
    reading.draughts_m = std::vector<double>(6, draught);
    reading.density_t_m3 = 1.025;
    return reading;
}

const std::string read_at_0 = "light draughts of Teal read 1970-01-02T00:00:00Z";

}  // namespace

TEST_CASE("draughts and dips weigh a load and tell what it was in place", "[draughts]") {
    const Worked w(drawn());
    const MethodResult& draughts = w.by(Method::draughts);
    // By hand: 880 − 420 = 460 t; 460 − 1.025·272 = 181.2 t under water; /0.875; ·2.65/1.625.
    CHECK_THAT(draughts.wet_t->value, WithinAbs(460, 1e-9));
    CHECK_THAT(draughts.in_situ_m3->value, WithinAbs(207.0857142857, 1e-9));
    CHECK_THAT(draughts.dry_t->value, WithinAbs(295.4953846154, 1e-9));
    CHECK_THAT(draughts.hopper_m3->value, WithinAbs(272, 1e-9));
}

TEST_CASE("a weighed load hangs on its draughts and dips, not on bulking", "[draughts]") {
    const Worked w(drawn());
    const MethodResult& draughts = w.by(Method::draughts);
    // Full at a row: the stretch below, 460 t a metre; light likewise 440; 0.01 m each: 6.3655 t.
    CHECK_THAT(draughts.wet_t->u_random, WithinAbs(6.3655, 0.0001));
    // In place: (6.3655² + (1.025·120·0.02)²)^½/0.875
    CHECK_THAT(draughts.in_situ_m3->u_random, WithinAbs(7.7992, 0.0001));
    CHECK(draughts.in_situ_m3->shared.empty());
}

TEST_CASE("each reading is corrected for the density of its own water", "[draughts]") {
    ASeason a = drawn();
    a.load.dock_density_t_m3 = 1.0;
    CHECK_THAT(Worked(a).by(Method::draughts).wet_t->value, WithinAbs(880 / 1.025 - 420, 1e-9));
    a.load.dock_density_t_m3.reset();
    CHECK_THAT(Worked(a).by(Method::draughts).wet_t->value, WithinAbs(460, 1e-9));
    CHECK(Worked(a).assumes(Method::draughts, "water density not read"));
}

TEST_CASE("without its own light draughts a load takes the barge's newest before it", "[draughts]") {
    ASeason a = drawn();
    a.load.light_draughts_m.clear();
    a.light_readings = {light_reading(301, hours(95), 1.0), light_reading(300, hours(24), 0.9),
                        light_reading(302, hours(97), 0.5)};
    a.light_readings[0].hopper_water_m3 = 20;
    // 460 t and the 20.5 t of water that was in her when she was read light
    CHECK_THAT(Worked(a).by(Method::draughts).wet_t->value, WithinAbs(480.5, 1e-9));
    a.load.loading_start.reset();  // then before loading ended
    CHECK_THAT(Worked(a).by(Method::draughts).wet_t->value, WithinAbs(880 - 200, 1e-9));
}

TEST_CASE("a light reading is an error that all its loads share", "[draughts]") {
    ASeason a = drawn();
    a.load.light_draughts_m.clear();
    a.light_readings = {light_reading(300, hours(24), 1.0)};
    const Worked w(a);
    CHECK_THAT(w.by(Method::draughts).wet_t->u_random, WithinAbs(4.6, 1e-9));
    CHECK_THAT(w.shared(*w.by(Method::draughts).wet_t, read_at_0), WithinAbs(-4.4, 1e-9));
}

TEST_CASE("what was not recorded about a weighing is named", "[draughts]") {
    const Worked w(drawn());
    CHECK(w.assumes(Method::draughts, "water in the empty hopper"));
    CHECK(w.assumes(Method::draughts, "fuel, ballast and stores"));
    ASeason a = drawn();
    a.load.full_draughts_m = {1.9, 1.9, 2.0, 2.0, 2.1, 2.1};
    CHECK(Worked(a).assumes(Method::draughts, "trim corrections taken as none"));
    CHECK(Worked(a).assumes(Method::draughts, "perpendiculars"));
    a.load.full_draughts_m = {2.0, 2.0, 1.9, 2.1, 2.0, 2.0};
    CHECK(Worked(a).assumes(Method::draughts, "list correction taken as none"));
}

TEST_CASE("a draught survey that misses a side or a mark is left out with its reason", "[draughts]") {
    ASeason a = drawn();
    a.load.full_draughts_m.pop_back();
    CHECK(Worked(a).figures.by(Method::draughts) == nullptr);
    CHECK(Worked(a).why_not(Method::draughts).find("four or six marks") != std::string::npos);
    a = drawn();
    a.load.light_draughts_m.clear();
    CHECK(Worked(a).why_not(Method::draughts).find("none of her light") != std::string::npos);
    a = drawn();
    a.load.full_draughts_m.clear();
    CHECK(Worked(a).why_not(Method::draughts).find("none of the loaded barge") != std::string::npos);
    a = drawn();
    a.load.full_draughts_m = std::vector<double>(6, 4.1);
    CHECK(Worked(a).why_not(Method::draughts).find("outside") != std::string::npos);
    a.barge.hydrostatic_table.clear();
    CHECK(Worked(a).why_not(Method::draughts) == "the barge has no hydrostatic table");
}

TEST_CASE("light heavier than loaded is no weight", "[draughts]") {
    ASeason a = drawn();
    std::swap(a.load.light_draughts_m, a.load.full_draughts_m);
    CHECK(Worked(a).figures.by(Method::draughts) == nullptr);
    CHECK(Worked(a).why_not(Method::draughts) == "light she is heavier than loaded");
}

TEST_CASE("without dips a weighing gives wet tonnes alone and says so", "[draughts]") {
    ASeason a = drawn();
    a.load.dips_m.clear();
    const Worked w(a);
    const MethodResult& draughts = w.by(Method::draughts);
    CHECK_THAT(draughts.wet_t->value, WithinAbs(460, 1e-9));
    CHECK_FALSE(draughts.in_situ_m3);
    CHECK_FALSE(draughts.dry_t);
    CHECK_FALSE(draughts.hopper_m3);
    CHECK(w.assumes(Method::draughts, "wet tonnes only"));
    CHECK(w.figures.counted_by() == nullptr);
    CHECK(w.figures.counted_by({}, Measure::wet_t) == &draughts);
}

TEST_CASE("top dips alone let a weighing find the in-situ volume, and bulking the hopper's", "[draughts]") {
    ASeason a = drawn();
    a.load.dips_m.clear();
    a.load.top_dips_m = {1.4};
    const Worked w(a);
    CHECK_THAT(w.by(Method::draughts).in_situ_m3->value, WithinAbs(207.0857142857, 1e-9));
    CHECK_THAT(w.by(Method::draughts).hopper_m3->value, WithinAbs(258.8571428571, 1e-9));
    CHECK(w.assumes(Method::draughts, "bulking factor: there are no dips"));
}

TEST_CASE("water on the spoil is not taken for spoil by a weighing", "[draughts]") {
    ASeason a = drawn();
    a.load.water_on_top_m = 0.1;  // V_top 284 m³: 460 − 291.1 = 168.9 t under water
    const Worked w(a);
    CHECK_THAT(w.by(Method::draughts).in_situ_m3->value, WithinAbs(168.9 / 0.875, 1e-9));
    CHECK_THAT(w.by(Method::draughts).wet_t->value, WithinAbs(460, 1e-9));
    CHECK_THAT(w.by(Method::draughts).hopper_m3->value, WithinAbs(272, 1e-9));
}

TEST_CASE("a load that weighs less than its volume of water is not spoil by volume", "[draughts]") {
    ASeason a = drawn();
    a.load.full_draughts_m = std::vector<double>(6, 1.5);  // 230 t over 272 m³
    const Worked w(a);
    CHECK_THAT(w.by(Method::draughts).wet_t->value, WithinAbs(230, 1e-9));
    CHECK_FALSE(w.by(Method::draughts).in_situ_m3);
    CHECK(w.assumes(Method::draughts, "less than water"));
}

TEST_CASE("a weighed load of two materials solves for both at once", "[draughts]") {
    ASeason a = drawn();
    a.load.material = Id{};
    a.lines = {{in_c1, 50}, {in_c2, 50, ripping}};
    const Worked w(a);
    const MethodResult& draughts = w.by(Method::draughts);
    // In-situ shares 144 : 71.4286; 0.668435·0.875 + 0.331565·0.675 = 0.808687; 181.2/0.808687 = 224.067
    CHECK_THAT(draughts.in_situ_m3->value, WithinAbs(224.0670, 0.0005));
    CHECK_THAT(draughts.wet_t->value, WithinAbs(460, 1e-9));
    CHECK_THAT(draughts.part(0).wet_t->value + draughts.part(1).wet_t->value, WithinAbs(460, 1e-9));
}
