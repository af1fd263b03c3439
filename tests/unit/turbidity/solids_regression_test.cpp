// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/solids_regression.h"

#include <catch2/catch.hpp>
#include <cmath>

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
    // Duan 1983, JASA 78:605-610: the mean of the residuals taken back, 1.0056862486 (TB-62, COMP with
    // R 4.2.2); TB-63 to TB-65, COMP
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

TEST_CASE("the line is NIST's of Norris, whose numbers stand for hundredths of the logarithms") {
    // NIST StRD, linear regression, Norris, 36 observations, {x, y}; data and certified values SEEN (ST-01,
    // ST-02, ST-07, ST-08), the residual standard deviation (ST-05) MEM.
    constexpr std::pair<double, double> norris[] = {
        {0.2, 0.1},     {337.4, 338.8}, {118.2, 118.1}, {884.6, 888.0}, {10.1, 9.2},    {226.5, 228.1},
        {666.3, 668.5}, {996.3, 998.5}, {448.6, 449.1}, {777.0, 778.9}, {558.2, 559.2}, {0.4, 0.3},
        {0.6, 0.1},     {775.5, 778.1}, {666.9, 668.8}, {338.0, 339.3}, {447.5, 448.9}, {11.6, 10.8},
        {556.0, 557.7}, {228.1, 228.3}, {995.8, 998.0}, {887.6, 888.8}, {120.2, 119.6}, {0.3, 0.3},
        {0.3, 0.6},     {556.8, 557.6}, {339.1, 339.3}, {887.2, 888.0}, {999.0, 998.5}, {779.0, 778.9},
        {11.1, 10.2},   {118.3, 117.6}, {229.2, 228.9}, {669.1, 668.4}, {448.9, 449.2}, {0.5, 0.2}};
    std::vector<SolidsPair> pairs;
    for (const auto& [x, y] : norris)
        pairs.push_back({std::pow(10, x / 100), std::pow(10, y / 100)});
    const auto found = *solids_regression(pairs);
    CHECK(found.n == 36);
    CHECK_THAT(found.slope, WithinAbs(1.00211681802045, 1e-12));
    CHECK_THAT(100 * found.intercept, WithinAbs(-0.262323073774029, 1e-9));
    CHECK_THAT(100 * found.standard_error, WithinAbs(0.884796396144373, 1e-9));
    CHECK_THAT(found.r2, WithinAbs(1 - 26.6173985294224 / (4255954.13232369 + 26.6173985294224), 1e-12));
}

TEST_CASE("a published power law gives its own solids") {
    // USGS SIR 2007-5164 table 3, MRBO: SSC = 1.456 Turb^1.263 with a correction of 1.048. Coefficients SEEN,
    // value COMP (TB-57).
    SolidsRegression published;
    published.n = 10;
    published.intercept = std::log10(1.456);
    published.slope = 1.263;
    published.smearing = 1.048;
    published.squares_log = 1;
    CHECK_THAT(solids_at(published, 20).solids_mg_l, WithinAbs(67.1002, 0.0001));
}

TEST_CASE("samples that make no line are refused") {
    CHECK(solids_regression({{1, 2}, {2, 3}}).refusals().front().code == "no-regression");
    CHECK_FALSE(solids_regression({{1, 2}, {2, 3}, {0, 4}}));
    CHECK_FALSE(solids_regression({{2, 2}, {2, 3}, {2, 4}}));
}
