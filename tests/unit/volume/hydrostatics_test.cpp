// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/hydrostatics.h"

#include <catch2/catch.hpp>

using Catch::Matchers::WithinAbs;
using namespace spoilbook;

namespace {

BargeTables tables_of(const Barge& barge) {
    const Table& table = barge.hydrostatic_table;
    return {{}, LinearTable(table, 1), LinearTable(table, 2), LinearTable(table, 3), LinearTable(table, 4)};
}

/// The ship of the worked example of UK P&I Club, "Measurement of bulk cargoes: draught surveys", p. 26. Its
/// LCF is printed as −4.354 with negative forward of midships; here forward is positive.
Barge example_ship() {
    Barge ship;
    ship.lbp_m = 181.8;
    ship.hydrostatic_density_t_m3 = 1.025;
    ship.hydrostatic_table = {{4.5, 17640, 42.0, 4.60, 434.9},  {4.6, 18060, 42.1, 4.55, 435.9},
                              {5.0, 19743, 42.32, 4.354, 440.}, {5.1, 20167, 42.37, 4.289, 441.},
                              {5.5, 21870, 42.6, 4.00, 445.5},  {5.6, 22300, 42.7, 3.95, 446.6}};
    return ship;
}

std::optional<Displacement> weigh(const Barge& barge, const std::vector<double>& marks,
                                  std::optional<double> density = std::nullopt) {
    return displacement(barge, tables_of(barge), {mark_means(marks).value(), density}, 1.025, 0);
}

}  // namespace

TEST_CASE("the worked example of a P&I club comes out to its printed tonne", "[hydrostatics]") {
    // SEEN: mean draught 5.0357 m, trim 1.0173 m by the stern, water 1.0185: 19 669.26 t. The text rounds LCF
    // and TPC on the way (trim correction −102.61 for −102.60), hence 0.02.
    const double fore = 5.0357 - 1.0173 / 2, aft = 5.0357 + 1.0173 / 2;
    const auto found = weigh(example_ship(), {fore, fore, 5.0357, 5.0357, aft, aft}, 1.0185);
    REQUIRE(found);
    CHECK_THAT(found->mean_draught_m, WithinAbs(5.0357, 1e-9));
    CHECK_THAT(found->first_trim_t, WithinAbs(-102.61, 0.02));  // DS-07
    CHECK_THAT(found->second_trim_t, WithinAbs(3.03, 0.005));
    CHECK(found->list_t == 0);
    CHECK_THAT(found->weight_t.value(), WithinAbs(19669.26, 0.02));  // DS-10
}

TEST_CASE("the same example at the table's own density", "[hydrostatics]") {
    const double fore = 5.0357 - 1.0173 / 2, aft = 5.0357 + 1.0173 / 2;
    const auto found = weigh(example_ship(), {fore, fore, 5.0357, 5.0357, aft, aft});
    CHECK_THAT(found->weight_t.value(), WithinAbs(19794.79, 0.02));  // DS-09, SEEN
    CHECK(found->assumed.size() == 2);                               // marks at the ends, density not read
}

TEST_CASE("the steps of the example", "[hydrostatics]") {
    CHECK_THAT(LinearTable(example_ship().hydrostatic_table).at(5.0357)->y,
               WithinAbs(19894.37, 0.005));  // DS-01
    CHECK_THAT(LinearTable(example_ship().hydrostatic_table, 2).at(5.0357)->y,
               WithinAbs(42.338, 0.0005));  // DS-02
    CHECK_THAT(LinearTable(example_ship().hydrostatic_table, 3).at(5.0357)->y,
               WithinAbs(4.331, 0.0005));  // DS-03
    CHECK_THAT(LinearTable(example_ship().hydrostatic_table, 4).at(5.5357)->y,
               WithinAbs(445.89, 0.005));  // DS-04
    CHECK_THAT(LinearTable(example_ship().hydrostatic_table, 4).at(4.5357)->y,
               WithinAbs(435.26, 0.005));                                                          // DS-05
    CHECK_THAT(first_trim_correction_t(1.0173, 4.331, 42.338, 181.8), WithinAbs(-102.61, 0.006));  // DS-07
}

TEST_CASE("means of marks, as a marine surveyor's specimen has them", "[hydrostatics]") {
    // DS-11 to DS-14, SEEN (secondary source; its misprint 10.19 is 11.19)
    const auto means = mark_means({10.79, 10.81, 10.90, 11.03, 11.16, 11.19}).value();
    CHECK_THAT(means.fore, WithinAbs(10.800, 0.0005));
    CHECK_THAT(means.mid, WithinAbs(10.965, 0.0005));
    CHECK_THAT(means.aft, WithinAbs(11.175, 0.0005));
    CHECK_THAT(means.trim_by_stern_m(), WithinAbs(0.375, 0.0005));
    // DS-19, COMP: corrected to the perpendiculars the mean of means is 10.97279
    CHECK_THAT(mean_draught_m({10.79620, 10.965, 11.19611, {}, {}}, 8), WithinAbs(10.97279, 0.00001));
}

TEST_CASE("on a box hull a 3 cm sag is read 2.5 mm too deep by the 6/8 rule", "[hydrostatics]") {
    // DS-26, derived: Simpson's rule is exact for a parabola on a rectangular waterplane
    const auto means = mark_means({2.0, 2.0, 2.03, 2.03, 2.0, 2.0}).value();
    CHECK_THAT(mean_draught_m(means, 6), WithinAbs(2.02, 1e-9));
    CHECK_THAT(mean_draught_m(means, 8) - mean_draught_m(means, 6), WithinAbs(0.0025, 1e-9));
}

TEST_CASE("a box hull weighs its own water, on any trim", "[hydrostatics]") {
    // HP-13, COMP: L 60, B 14, from 0.850 to 3.100 m at 1.025: 1937.25 t; HP-14: TPC 8.610.
    Barge box;
    box.lbp_m = 60;
    box.draught_mean = 6;
    const double mctc = 1.025 * 14 * 60 * 60 / 1200;  // DS-28
    box.hydrostatic_table = {{0, 0, 8.61, 0, mctc}, {4, 4 * 861, 8.61, 0, mctc}};
    const auto light = weigh(box, {0.75, 0.75, 0.85, 0.85, 0.95, 0.95}, 1.025);
    const auto full = weigh(box, {3.1, 3.1, 3.1, 3.1, 3.1, 3.1}, 1.025);
    CHECK_THAT(full->weight_t.value() - light->weight_t.value(), WithinAbs(1937.25, 0.005));
    CHECK(light->first_trim_t == 0);
    CHECK(light->second_trim_t == 0);
}

TEST_CASE("the trim correction is added where she floats about a point on her deeper side",
          "[hydrostatics]") {
    CHECK(first_trim_correction_t(0.5, -1, 8, 50) > 0);  // by the stern, LCF aft
    CHECK(first_trim_correction_t(0.5, 1, 8, 50) < 0);
    CHECK(first_trim_correction_t(-0.5, 1, 8, 50) > 0);  // by the head, LCF forward
    CHECK(first_trim_correction_t(0, 1, 8, 50) == 0);
}

TEST_CASE("a list adds displacement whichever way she leans", "[hydrostatics]") {
    // By hand: 0.2 m and 0.5 t/cm apart: 6·0.2·0.5 = 0.6 t
    CHECK_THAT(list_correction_t(2.1, 1.9, 8.5, 8.0), WithinAbs(0.6, 1e-9));
    CHECK_THAT(list_correction_t(1.9, 2.1, 8.0, 8.5), WithinAbs(0.6, 1e-9));
}

TEST_CASE("four marks take midships for the mean of the ends", "[hydrostatics]") {
    const auto means = mark_means({1.0, 1.2, 1.4, 1.6}).value();
    CHECK_THAT(means.mid, WithinAbs(1.3, 1e-12));
    CHECK_THAT(mean_draught_m(means, 8), WithinAbs(1.3, 1e-12));
    CHECK_FALSE(mark_means({1, 1, 1}));
    CHECK_FALSE(mark_means({1, 1, 1, 1, 1}));
    CHECK_FALSE(mark_means({}));
}

TEST_CASE("near an end of the table the second trim correction is named as not made", "[hydrostatics]") {
    const auto found = weigh(example_ship(), {4.6, 4.6, 4.7, 4.7, 4.8, 4.8}, 1.025);
    REQUIRE(found);
    CHECK(found->second_trim_t == 0);
    CHECK(found->first_trim_t != 0);
    REQUIRE(found->assumed.size() == 2);
    CHECK(found->assumed[1].find("second trim") != std::string_view::npos);
}
