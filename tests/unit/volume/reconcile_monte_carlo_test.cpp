// SPDX-License-Identifier: GPL-3.0-or-later
// The fit's uncertainty against seeded draws of everything that it hangs on (JCGM 101:2008).
#include <catch2/catch.hpp>
#include <cmath>
#include <random>

#include "model/volume/reconcile.h"

using namespace spoilbook;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

#ifdef NDEBUG
constexpr int draws = 100000;
#else
constexpr int draws = 5000;  // builds for the debugger and the sanitizers are slow; u then scatters by 1 %
#endif

constexpr double true_b = 1.3, fill_u = 0.02, prior_u = 0.05;
constexpr SourceId fill = 3;

struct Truth {
    double bed, bed_u, random_u, weighed, weighed_u;
};
const std::vector<Truth> truths{{8000, 160, 40, 0, 0}, {12000, 180, 60, 1500, 30}, {5000, 90, 25, 0, 0}};

/// What surveyor, barges and book would say, each with its own error drawn; one fill factor for all.
std::vector<ClaimPeriod> drawn(std::mt19937_64& engine) {
    std::normal_distribution<double> standard;
    const double fill_error = fill_u * standard(engine);
    std::vector<ClaimPeriod> periods;
    for (const Truth& truth : truths) {
        ClaimPeriod period;
        period.removed = {truth.bed + truth.bed_u * standard(engine), truth.bed_u};
        const double hopper = (truth.bed - truth.weighed) * true_b;
        Estimate read{hopper * (1 + fill_error) + truth.random_u * standard(engine), truth.random_u, {}};
        read.add_shared(fill, fill_u * read.value);
        period.bulked = {{0, read}};
        period.weighed_m3 = {truth.weighed + truth.weighed_u * standard(engine), truth.weighed_u, {}};
        periods.push_back(period);
    }
    return periods;
}

}  // namespace

TEST_CASE("a hundred thousand seasons scatter as the fit says", "[monte_carlo]") {
    std::mt19937_64 engine(20251103);
    std::normal_distribution<double> standard;
    double n = 0, mean = 0, squares = 0, said_u = 0, chi_square = 0, rare = 0;
    for (int i = 0; i < draws; ++i) {
        const auto periods = drawn(engine);
        const BulkingPrior prior{true_b + prior_u * standard(engine), prior_u};
        const auto found = reconcile(periods, std::vector<std::optional<BulkingPrior>>{prior});
        ++n;
        const double d = found.fits[0].value - mean;
        mean += d / n;
        squares += d * (found.fits[0].value - mean);
        said_u += found.fits[0].u / draws;
        chi_square += found.chi_square / draws;
        if (*found.p_value < 0.05) rare += 1.0 / draws;
    }
    const double u = std::sqrt(squares / (n - 1));
    CHECK_THAT(u, WithinRel(said_u, 4 / std::sqrt(2.0 * draws)));  // four of its own standard errors
    // H/B bends: first order leaves the mean off by less than a tenth of u.
    CHECK_THAT(mean, WithinAbs(true_b, 0.1 * u));
    // χ² of 3 claim-periods and a prior less one material: its mean is 3, its variance 6; one in twenty is
    // rare.
    CHECK_THAT(chi_square, WithinAbs(3, 4 * std::sqrt(6.0 / draws) + 0.03));
    CHECK_THAT(rare, WithinAbs(0.05, 4 * std::sqrt(0.05 * 0.95 / draws) + 0.003));
}
