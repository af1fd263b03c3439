// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/bed/surface_look.h"

#include "model/bed/levels_between.h"
#include "tests/unit/bed/grids.h"

namespace spoilbook::test {
namespace {

/// A bed that falls by 0.1 m a metre to the east, 100 by 20 m, from 0 m on.
MadeGrid slope() {
    MadeGrid grid;
    std::vector<double> row;
    for (int i = 0; i < 100; ++i)
        row.push_back(-0.1 * (i + 0.5));
    grid.rows.assign(20, row);
    return grid;
}

SurfaceLook seen(const SurveyBed& bed, const Area& area, const SurfaceBounds& bounds,
                 const SurveyBed* baseline = nullptr) {
    return look(bed, baseline, area, bounds).value();
}

}  // namespace

TEST_CASE("a slope is past a level over the part that lies below it", "[bed][surface]") {
    const auto grid = slope();
    const auto bed = bed_of(grid, survey_up(0));
    SurfaceBounds bounds;
    bounds.lowest_m = -7;
    const auto all = seen(bed, area_of({grid.part(0, 0, 100, 20)}), bounds);
    CHECK_THAT(all.area_m2, WithinAbs(2'000, 1e-6));
    CHECK_THAT(all.covered_m2, WithinAbs(2'000, 1e-6));
    // From 70 m on it lies lower than 7 m.
    CHECK_THAT(all.past_m2, WithinAbs(600, 1e-6));
    CHECK(all.in_doubt_m2 == 0);
    REQUIRE(all.worst);
    CHECK_THAT(all.worst->past_m, WithinAbs(2.95, 1e-5));
    CHECK_THAT(all.worst->place.easting_m, WithinAbs(711'739.5, 1e-6));
    // Half of a pixel counts half: an area that ends in the middle of what is past it.
    const auto part = seen(bed, area_of({grid.part(60, 4, 80.5, 6.25)}), bounds);
    CHECK_THAT(part.past_m2, WithinAbs(10.5 * 2.25, 1e-6));
}

TEST_CASE("what lies within two standard uncertainties of a level is in doubt", "[bed][surface]") {
    const auto grid = slope();
    SurfaceBounds bounds;
    bounds.lowest_m = -7;
    // 2 u is 0.5 m: five metres of the slope on either side.
    const auto look = seen(bed_of(grid, survey_up(0.25)), area_of({grid.part(0, 0, 100, 20)}), bounds);
    CHECK_THAT(look.past_m2, WithinAbs(500, 1e-6));
    CHECK_THAT(look.in_doubt_m2, WithinAbs(200, 1e-6));
    CHECK_THAT(look.possible_share(), WithinAbs(0.35, 1e-9));
}

TEST_CASE("what was not surveyed may be past it", "[bed][surface]") {
    auto grid = slope();
    for (auto& row : grid.rows)
        for (std::size_t i = 0; i < 10; ++i)
            row[i] = NAN;
    SurfaceBounds bounds;
    bounds.lowest_m = -20;
    const auto look = seen(bed_of(grid, survey_up(0)), area_of({grid.part(-20, 0, 100, 20)}), bounds);
    CHECK_THAT(look.area_m2, WithinAbs(2'400, 1e-6));
    CHECK_THAT(look.not_surveyed_m2(), WithinAbs(600, 1e-6));
    CHECK(look.past_share() == 0);
    CHECK_THAT(look.possible_share(), WithinAbs(0.25, 1e-9));
}

TEST_CASE("without an uncertainty nothing can be told of a pixel", "[bed][surface]") {
    const auto grid = slope();
    Survey survey = survey_up(0);
    survey.u_m.reset();
    SurfaceBounds bounds;
    bounds.lowest_m = -7;
    const auto look = seen(bed_of(grid, survey), area_of({grid.part(0, 0, 100, 20)}), bounds);
    CHECK_FALSE(look.has_u);
    CHECK(look.past_m2 == 0);
    CHECK_THAT(look.in_doubt_m2, WithinAbs(2'000, 1e-6));
    // The worst is told all the same.
    CHECK_THAT(look.worst->past_m, WithinAbs(2.95, 1e-5));
}

TEST_CASE("on a bound it is kept", "[bed][surface]") {
    MadeGrid grid;
    grid.rows = {{-9.5}};
    SurfaceBounds bounds;
    bounds.lowest_m = -9.5;
    const auto look = seen(bed_of(grid, survey_up(0)), area_of({grid.part(0, 0, 1, 1)}), bounds);
    CHECK(look.past_m2 == 0);
    CHECK(look.in_doubt_m2 == 0);
}

TEST_CASE("a mound rises over the bed that was there before, however the two grids lie", "[bed][surface]") {
    // Before, a slope on pixels of 2 m half a pixel off; since, the same slope with 1.5 m on 4 m² of it.
    MadeGrid before;
    before.west -= 1;
    before.south -= 1;
    before.step_m = 2;
    std::vector<double> row;
    for (int i = 0; i < 60; ++i)
        row.push_back(-0.1 * 2 * i);
    before.rows.assign(12, row);
    auto after = slope();
    for (const std::size_t r : {9u, 10u})
        for (const std::size_t c : {40u, 41u})
            after.rows[r][c] += 1.5;
    const auto baseline = bed_of(before, survey_up(0.03));
    const auto bed = bed_of(after, survey_up(0.04));
    SurfaceBounds bounds;
    bounds.most_rise_m = 1;
    const auto look = seen(bed, area_of({after.part(0, 0, 100, 20)}), bounds, &baseline);
    CHECK_THAT(look.covered_m2, WithinAbs(2'000, 1e-6));
    CHECK_THAT(look.past_m2, WithinAbs(4, 1e-6));
    CHECK(look.in_doubt_m2 == 0);
    CHECK_THAT(look.worst->past_m, WithinAbs(0.5, 1e-5));
    CHECK_THAT(look.worst->u_m, WithinAbs(0.05, 1e-12));
    // 1.5 m keep 1.55 m by less than 2 u of both, 0.1 m.
    bounds.most_rise_m = 1.55;
    CHECK_THAT(seen(bed, area_of({after.part(0, 0, 100, 20)}), bounds, &baseline).in_doubt_m2,
               WithinAbs(4, 1e-6));
}

TEST_CASE("where the baseline has a hole nothing can be told of a rise", "[bed][surface]") {
    auto before = slope();
    before.rows[5][50] = NAN;
    const auto baseline = bed_of(before, survey_up(0));
    const auto grid = slope();
    SurfaceBounds bounds;
    bounds.most_rise_m = 0.5;
    const auto look =
        seen(bed_of(grid, survey_up(0)), area_of({grid.part(0, 0, 100, 20)}), bounds, &baseline);
    CHECK_THAT(look.not_surveyed_m2(), WithinAbs(0, 1e-6));
    CHECK_THAT(look.not_in_baseline_m2(), WithinAbs(1, 1e-6));
    CHECK_THAT(look.possible_share(), WithinAbs(1 / 2'000.0, 1e-9));
}

TEST_CASE("a rise is told over the seams of strips", "[bed][surface]") {
    // Strips of 209 rows; the mound lies in the last row of the first and the first of the second.
    MadeGrid before;
    before.rows.assign(420, std::vector<double>(5'000, -20));
    MadeGrid after = before;
    after.rows[208][17] = after.rows[209][17] = -18;
    const auto baseline = bed_of(before, survey_up(0)), bed = bed_of(after, survey_up(0));
    SurfaceBounds bounds;
    bounds.most_rise_m = 1;
    CHECK_THAT(seen(bed, area_of({after.part(0, 0, 5'000, 420)}), bounds, &baseline).past_m2,
               WithinAbs(2, 1e-6));
}

TEST_CASE("a claim in parts and with a hole is judged where it is", "[bed][surface]") {
    const auto grid = slope();
    SurfaceBounds bounds;
    bounds.lowest_m = -7;
    Area area{
        {Polygon{{grid.part(60, 0, 80, 10), grid.part(72, 2, 76, 6)}}, Polygon{{grid.part(90, 12, 95, 20)}}}};
    const auto look = seen(bed_of(grid, survey_up(0)), area, bounds);
    CHECK_THAT(look.area_m2, WithinAbs(200 - 16 + 40, 1e-6));
    CHECK_THAT(look.past_m2, WithinAbs(100 - 16 + 40, 1e-6));
}

TEST_CASE("levels between the pixels of a plane are the plane's", "[bed]") {
    const auto grid = slope();
    const auto bed = bed_of(grid, survey_up(0));
    MadeGrid fine;
    fine.west += 10.3;
    fine.south += 3.7;
    fine.step_m = 0.35;
    fine.rows.assign(7, std::vector<double>(9, 0));
    const auto other = bed_of(fine, survey_up(0));
    const auto levels = LevelsBetween(bed).at_middles_of(other.grid(), {0, 0, 9, 7});
    for (std::size_t i = 0; i < levels.size(); ++i)
        CHECK_THAT(levels[i], WithinAbs(-0.1 * (10.3 + 0.35 * (static_cast<double>(i % 9) + 0.5)), 1e-5));
}

}  // namespace spoilbook::test
