// SPDX-License-Identifier: GPL-3.0-or-later
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include "model/volume/reconcile.h"

using namespace spoilbook;

namespace {

using Priors = std::vector<std::optional<BulkingPrior>>;

double between(double low, double high) {
    return low + (high - low) * 0.0001 * *rc::gen::inRange(0, 10001);
}

/// One to five claim-periods of one material near B = 1.3, with what their barges share.
std::vector<ClaimPeriod> some_periods() {
    std::vector<ClaimPeriod> periods(static_cast<std::size_t>(*rc::gen::inRange(1, 6)));
    for (auto& period : periods) {
        const double bed = between(3000, 20000);
        period.removed = {bed, bed * between(0.005, 0.03)};
        Estimate hopper{bed * 1.3 * between(0.93, 1.07), bed * between(0, 0.01), {}};
        hopper.add_shared(3, hopper.value * between(0, 0.03));
        hopper.add_shared(5, hopper.value * between(-0.01, 0.01));
        period.bulked = {{0, hopper}};
        period.weighed_m3 = {bed * 0.1, bed * 0.001, {}};
        period.weighed_m3.add_shared(5, bed * 0.002);
    }
    return periods;
}

/// The determinant-free way: solves V x = r by elimination with pivoting, in the test's own code.
std::vector<double> solved(std::vector<std::vector<double>> m, std::vector<double> right) {
    const std::size_t n = right.size();
    for (std::size_t i = 0; i < n; ++i) {
        std::size_t best = i;
        for (std::size_t j = i; j < n; ++j) {
            if (std::fabs(m[j][i]) > std::fabs(m[best][i])) best = j;
        }
        std::swap(m[i], m[best]);
        std::swap(right[i], right[best]);
        for (std::size_t j = 0; j < n; ++j) {
            if (j == i) continue;
            const double f = m[j][i] / m[i][i];
            for (std::size_t c = i; c < n; ++c)
                m[j][c] -= f * m[i][c];
            right[j] -= f * right[i];
        }
    }
    for (std::size_t i = 0; i < n; ++i)
        right[i] /= m[i][i];
    return right;
}

Estimate barges_at(const ClaimPeriod& period, double b) {
    return period.weighed_m3 + period.bulked[0].hopper_m3 * (1 / b);
}

double shared_of(const Estimate& estimate, SourceId source) {
    for (const auto& part : estimate.shared) {
        if (part.source == source) return part.amount;
    }
    return 0;
}

/// χ² at b, with the covariance taken at `fixed`, written out from the definition.
double chi_square(const std::vector<ClaimPeriod>& periods, const BulkingPrior& prior, double b,
                  double fixed) {
    const std::size_t n = periods.size();
    std::vector<std::vector<double>> v(n, std::vector<double>(n));
    std::vector<double> r(n);
    for (std::size_t i = 0; i < n; ++i) {
        r[i] = periods[i].removed.value - barges_at(periods[i], b).value;
        for (std::size_t j = 0; j < n; ++j) {
            for (const SourceId source : {3U, 5U})
                v[i][j] += shared_of(barges_at(periods[i], fixed), source) *
                           shared_of(barges_at(periods[j], fixed), source);
        }
        v[i][i] += std::pow(periods[i].removed.u, 2) + std::pow(barges_at(periods[i], fixed).u_random, 2);
    }
    const auto x = solved(v, r);
    double sum = std::pow((b - prior.value) / *prior.u, 2);
    for (std::size_t i = 0; i < n; ++i)
        sum += r[i] * x[i];
    return sum;
}

template <class F>
double golden_section(F&& f, double low, double high) {
    const double ratio = (std::sqrt(5.0) - 1) / 2;
    for (int i = 0; i < 80; ++i) {
        const double a = high - ratio * (high - low), b = low + ratio * (high - low);
        (f(a) < f(b) ? high : low) = f(a) < f(b) ? b : a;
    }
    return (low + high) / 2;
}

bool near(double a, double b, double relative) {
    return std::fabs(a - b) <= relative * std::max(std::fabs(a), std::fabs(b));
}

}  // namespace

TEST_CASE("the fit is where a search by brute force finds the least chi-square", "[property]") {
    CHECK(rc::check([] {
        const auto periods = some_periods();
        const BulkingPrior prior{between(1.15, 1.4), between(0.02, 0.1)};
        const auto found = reconcile(periods, Priors{prior});
        RC_ASSERT(found.fits.size() == 1U);
        const double fit = found.fits[0].value;
        const auto f = [&](double b) { return chi_square(periods, prior, b, fit); };
        RC_ASSERT(near(fit, golden_section(f, 0.8, 2.2), 2e-6));
        RC_ASSERT(near(1 + found.chi_square, 1 + f(fit), 1e-8));
        // u from the curvature: χ² rises by h²/u² at a distance h on the average of both sides. Where the
        // data disagree with the prior by many u, the bend of H/B adds some of its own: hence the width.
        const double h = found.fits[0].u / 20;
        const double rise = (f(fit + h) + f(fit - h)) / 2 - f(fit);
        RC_ASSERT(near(rise, 1.0 / 400, 0.25));
    }));
}

TEST_CASE("the order of claim-periods changes no factor", "[property]") {
    CHECK(rc::check([] {
        auto periods = some_periods();
        const Priors priors{BulkingPrior{1.28, 0.05}};
        const auto before = reconcile(periods, priors);
        std::reverse(periods.begin(), periods.end());
        const auto after = reconcile(periods, priors);
        RC_ASSERT(near(before.fits[0].value, after.fits[0].value, 1e-9));
        RC_ASSERT(near(before.fits[0].u, after.fits[0].u, 1e-8));
        RC_ASSERT(near(1 + before.chi_square, 1 + after.chi_square, 1e-8));
    }));
}

TEST_CASE("in cubic feet the factor is the same", "[property]") {
    CHECK(rc::check([] {
        auto periods = some_periods();
        const Priors priors{BulkingPrior{1.28, 0.05}};
        const auto before = reconcile(periods, priors);
        const double feet = 35.3147;
        for (auto& period : periods) {
            period.removed = {period.removed.value * feet, period.removed.u * feet};
            period.weighed_m3 = period.weighed_m3 * feet;
            period.bulked[0].hopper_m3 = period.bulked[0].hopper_m3 * feet;
        }
        const auto after = reconcile(periods, priors);
        RC_ASSERT(near(before.fits[0].value, after.fits[0].value, 1e-9));
        RC_ASSERT(near(before.fits[0].u, after.fits[0].u, 1e-8));
    }));
}

TEST_CASE("more evidence never makes a factor less sure", "[property]") {
    CHECK(rc::check([] {
        // All at the same ratio: then only the weights speak.
        auto periods = some_periods();
        for (auto& period : periods)
            period.removed.value = period.bulked[0].hopper_m3.value / 1.3 + period.weighed_m3.value;
        const Priors priors{BulkingPrior{1.3, 0.05}};
        double last = 0.05;
        for (std::size_t n = 1; n <= periods.size(); ++n) {
            const auto found = reconcile(std::span(periods).first(n), priors);
            RC_ASSERT(found.fits[0].u <= last * (1 + 1e-9));
            RC_ASSERT(near(found.fits[0].value, 1.3, 1e-9));
            last = found.fits[0].u;
        }
    }));
}
