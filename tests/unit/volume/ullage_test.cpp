// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "tests/unit/volume/a_season.h"

using Catch::Matchers::WithinAbs;
using namespace spoilbook;
using namespace spoilbook::test;

namespace {

ASeason dipped(std::vector<double> dips) {
    ASeason a;
    a.load.material = id(sand);
    a.load.dips_m = std::move(dips);
    return a;
}

}  // namespace

TEST_CASE("dips are averaged and read through the ullage table", "[ullage]") {
    const Worked w(dipped({1.3, 1.5, 1.4, 1.4}));
    const MethodResult& ullage = w.by(Method::ullage);
    CHECK_THAT(ullage.hopper_m3->value, WithinAbs(272, 1e-9));  // 320 − 0.4·120
    CHECK_THAT(ullage.in_situ_m3->value, WithinAbs(217.6, 1e-9));
    // Scatter of 1.3 1.5 1.4 1.4 is 0.0816497; /2, with 0.02 of the reading: 0.0454606 m; 120 m³ a metre.
    CHECK_THAT(ullage.hopper_m3->u_random, WithinAbs(5.4553, 0.0001));
    CHECK(ullage.hopper_m3->shared.empty());
    CHECK_THAT(w.shared(*ullage.in_situ_m3, "bulking factor of sand, materials.csv"),
               WithinAbs(-8.704, 1e-9));
}

TEST_CASE("the reading's own uncertainty does not shrink with the number of dips", "[ullage]") {
    const Worked w(dipped(std::vector<double>(40, 1.4)));
    CHECK_THAT(w.by(Method::ullage).hopper_m3->u_random, WithinAbs(120 * 0.02, 1e-9));
}

TEST_CASE("one dip has no scatter, and the figure says so", "[ullage]") {
    const Worked w(dipped({1.4}));
    CHECK_THAT(w.by(Method::ullage).hopper_m3->u_random, WithinAbs(120 * 0.02, 1e-9));
    CHECK(w.assumes(Method::ullage, "one dip"));
}

TEST_CASE("dips outside the table give no volume, and the reason", "[ullage]") {
    CHECK(Worked(dipped({3.1, 3.2})).figures.by(Method::ullage) == nullptr);
    CHECK(Worked(dipped({3.1, 3.2})).why_not(Method::ullage).find("outside") != std::string::npos);
    // One dip outside is no matter where their mean is inside.
    CHECK(Worked(dipped({2.7, 3.2})).figures.by(Method::ullage) != nullptr);
}

TEST_CASE("dips without a table, or without a barge, give no volume", "[ullage]") {
    ASeason a = dipped({1.4});
    a.barge.ullage_table.clear();
    CHECK(Worked(a).why_not(Method::ullage) == "the barge has no ullage table");
    a = dipped({1.4});
    a.load.barge = Id{};
    CHECK(Worked(a).why_not(Method::ullage) == "the barge has no ullage table");
}

TEST_CASE("water on the spoil adds its weight, not volume", "[ullage]") {
    ASeason a = dipped({1.4, 1.4});
    a.load.water_on_top_m = 0.1;  // 12 m³ of water, 12.3 t
    const Worked w(a);
    const Worked dry_top(dipped({1.4, 1.4}));
    CHECK_THAT(w.by(Method::ullage).hopper_m3->value, WithinAbs(272, 1e-9));
    CHECK_THAT(w.by(Method::ullage).dry_t->value, WithinAbs(dry_top.by(Method::ullage).dry_t->value, 1e-9));
    // 217.6·0.875 + 272·1.025 = 469.2
    CHECK_THAT(dry_top.by(Method::ullage).wet_t->value, WithinAbs(469.2, 1e-9));
    CHECK_THAT(w.by(Method::ullage).wet_t->value, WithinAbs(481.5, 1e-9));
}

TEST_CASE("dips to the water on top are worth the same as its depth", "[ullage]") {
    ASeason a = dipped({1.4, 1.4});
    a.load.top_dips_m = {1.25, 1.35};
    CHECK_THAT(Worked(a).by(Method::ullage).wet_t->value, WithinAbs(481.5, 1e-9));
    a.load.top_dips_m = {1.6};  // below the spoil: there is no water over it
    CHECK_THAT(Worked(a).by(Method::ullage).wet_t->value, WithinAbs(469.2, 1e-9));
    a.load.top_dips_m = {3.6};  // outside the table: the weight is not known, the volume is
    CHECK_FALSE(Worked(a).by(Method::ullage).wet_t);
    CHECK(Worked(a).by(Method::ullage).dry_t);
    CHECK(Worked(a).assumes(Method::ullage, "outside the ullage table"));
}

TEST_CASE("in fresh water the book's own density counts", "[ullage]") {
    ASeason a = dipped({1.4, 1.4});
    a.harbour.water_density_t_m3 = 1.0;
    CHECK_THAT(Worked(a).by(Method::ullage).wet_t->value, WithinAbs(217.6 * 0.9 + 272, 1e-9));
}

TEST_CASE("dry solids of a hopper follow the mass balance", "[ullage]") {
    // HP-04, MEM formula, COMP number: V 750 m³ at 1.6 t/m³, grains 2.65, water 1.025: 703.2692 t.
    // A bulking factor of 1 makes the hopper mix the in-place soil.
    ASeason a = dipped({0});
    a.barge.ullage_table = {{0, 750}, {1, 0}};
    a.materials[0].bulking_factor = 1;
    a.materials[0].situ_density_t_m3 = 1.6;
    CHECK_THAT(Worked(a).by(Method::ullage).dry_t->value, WithinAbs(703.2692, 0.0005));
    a.materials[0].situ_density_t_m3 = 2.65;  // HP-07 scaled: solid rock, 750·2.65
    CHECK_THAT(Worked(a).by(Method::ullage).dry_t->value, WithinAbs(1987.5, 0.0005));
}
