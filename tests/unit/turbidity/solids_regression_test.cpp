// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/solids_regression.h"

#include <catch2/catch.hpp>

using namespace spoilbook;
using Catch::Matchers::WithinAbs;

namespace {

std::vector<SolidsPair> made_up() {
    const double turbidity[] = {3, 6, 11, 19, 30, 48, 75, 110, 170, 260};
    const double solids[] = {7, 11, 24, 31, 64, 81, 160, 190, 330, 470};
    std::vector<SolidsPair> pairs;
    for (std::size_t i = 0; i < 10; ++i)
        pairs.push_back({turbidity[i], solids[i]});
    return pairs;
}

}  // namespace

TEST_CASE("solids follow turbidity by least squares of the logarithms") {
    const auto found = *solids_regression(made_up());
    // TB-58 to TB-62, COMP with R 4.2.2 lm(log10(S) ~ log10(T)), method of Duan 1983 and USGS TM 3-C4
    CHECK(found.n == 10);
    CHECK_THAT(found.intercept, WithinAbs(0.3360415450, 1e-9));
    CHECK_THAT(found.slope, WithinAbs(0.9666664270, 1e-9));
    CHECK_THAT(found.standard_error, WithinAbs(0.0520907959, 1e-9));
    CHECK_THAT(found.r2, WithinAbs(0.9936856239, 1e-9));
    CHECK_THAT(found.smearing, WithinAbs(1.0056862486, 1e-9));
}

TEST_CASE("what is lost in taking logs back is put on by Duan's smearing") {
    const auto found = *solids_regression(made_up());
    // TB-63 to TB-65, COMP
    CHECK_THAT(solids_at(found, 10).solids_mg_l, WithinAbs(20.19158836, 1e-7));
    CHECK_THAT(solids_at(found, 50).solids_mg_l, WithinAbs(95.68444021, 1e-7));
    CHECK_THAT(solids_at(found, 100).solids_mg_l, WithinAbs(186.99797807, 1e-7));
}

TEST_CASE("a new sample lies within the prediction interval nine times in ten") {
    const auto at_50 = solids_at(*solids_regression(made_up()), 50, 0.9);
    // TB-66, TB-67, COMP
    CHECK_THAT(at_50.low, WithinAbs(75.663467, 1e-5));
    CHECK_THAT(at_50.high, WithinAbs(121.003074, 1e-5));
    CHECK_FALSE(at_50.extrapolated);
    CHECK(solids_at(*solids_regression(made_up()), 500).extrapolated);
}

TEST_CASE("a published regression gives its own solids") {
    // USGS NRTWQ model for 03374100, TB-45 to TB-48: coefficients SEEN, values COMP.
    SolidsRegression published;
    published.n = 13;
    published.intercept = 0.3302;
    published.slope = 0.9682;
    published.smearing = 1.015;
    published.squares_log = 1;
    CHECK_THAT(solids_at(published, 10).solids_mg_l, WithinAbs(20.1774, 0.0005));
    CHECK_THAT(solids_at(published, 50).solids_mg_l, WithinAbs(95.8537, 0.0005));
    CHECK_THAT(solids_at(published, 100).solids_mg_l, WithinAbs(187.5280, 0.0005));
    CHECK_THAT(solids_at(published, 500).solids_mg_l, WithinAbs(890.8586, 0.0005));
}

TEST_CASE("samples that make no line are refused") {
    CHECK(solids_regression({{1, 2}, {2, 3}}).refusals().front().code == "no-regression");
    CHECK_FALSE(solids_regression({{1, 2}, {2, 3}, {0, 4}}));
    CHECK_FALSE(solids_regression({{2, 2}, {2, 3}, {2, 4}}));
}
