// SPDX-License-Identifier: GPL-3.0-or-later
// Textbook reconciliations run through reconcile(): each free flow is a material's 1/B, each measured flow a
// claim-period whose hopper volumes are the flow's coefficients (least squares does not mind what its
// unknowns are called).
#include <catch2/catch.hpp>
#include <cmath>

#include "model/volume/reconcile.h"

using namespace spoilbook;
using Catch::Matchers::WithinAbs;

namespace {

using Priors = std::vector<std::optional<BulkingPrior>>;

struct Term {
    std::size_t flow;
    double coefficient;
};

ClaimPeriod measured(double value, double u, const std::vector<Term>& terms) {
    ClaimPeriod period;
    period.removed = {value, u};
    for (const Term& term : terms)
        period.bulked.push_back({term.flow, {term.coefficient, 0, {}}});
    return period;
}

double flow(const Reconciled& found, std::size_t which) {
    return 1 / found.fits.at(which).value;
}
double flow_u(const Reconciled& found, std::size_t which) {
    return found.fits.at(which).u / (found.fits[which].value * found.fits[which].value);
}

}  // namespace

TEST_CASE("the heat exchanger with bypass closes as in the textbook", "[reconcile]") {
    // Narasimhan & Jordache, Data Reconciliation and Gross Error Detection (2000), Table 1-1: F1 = F2 + F3,
    // F2 = F4, F3 = F5, F4 + F5 = F6, equal variances. MEM, recomputed with a reference library.
    const Term f2{0, 1}, f3{1, 1};
    const std::vector<ClaimPeriod> periods{measured(101.91, 1, {f2, f3}), measured(64.45, 1, {f2}),
                                           measured(34.65, 1, {f3}),      measured(64.20, 1, {f2}),
                                           measured(36.44, 1, {f3}),      measured(98.88, 1, {f2, f3})};
    const auto found = reconcile(periods, Priors{std::nullopt, std::nullopt});
    REQUIRE(found.fits.size() == 2);
    CHECK_THAT(flow(found, 0), WithinAbs(64.50, 0.005));
    CHECK_THAT(flow(found, 1), WithinAbs(35.72, 0.005));
    CHECK_THAT(flow(found, 0) + flow(found, 1), WithinAbs(100.22, 0.005));
    CHECK(found.dof == 4);
}

namespace {

enum Flow : std::size_t { fdkel, spl, v, hk, a7, a6, a5 };

/// Two measurements with correlation r: the common part of their errors is a source of its own.
void correlate(ClaimPeriod& a, ClaimPeriod& b, double r, SourceId source) {
    for (ClaimPeriod* period : {&a, &b}) {
        period->weighed_m3.add_shared(source, std::sqrt(r) * period->removed.u);
        period->removed.u *= std::sqrt(1 - r);
    }
}

/// VDI 2048-1's steam plant. Measured values, half widths (95 %, 1.96 σ), correlations and constraints SEEN
/// in OpenModelica's User's Guide (data reconciliation) and its test library: FDKEL + FDKELL − SPL − SPLL +
/// 0.4 V = 0; SPL + SPLL − V − HK − A7 − A6 − A5 = 0; A7 + A6 + A5 − HDNK = 0.
Reconciled steam_plant(double half_fdkel, double half_fdkell, double r_spl) {
    const auto u = [](double half_width) { return half_width / 1.96; };
    const Term drains[]{{a7, 1}, {a6, 1}, {a5, 1}};
    std::vector<ClaimPeriod> periods{
        measured(46.241, u(half_fdkel), {{fdkel, 1}}),
        measured(45.668, u(half_fdkell), {{v, 0.6}, {hk, 1}, drains[0], drains[1], drains[2], {fdkel, -1}}),
        measured(44.575, u(0.535), {{spl, 1}}),
        measured(44.319, u(0.532), {{v, 1}, {hk, 1}, drains[0], drains[1], drains[2], {spl, -1}}),
        measured(0.525, u(0.105), {{v, 1}}),
        measured(69.978, u(0.854), {{hk, 1}}),
        measured(10.364, u(0.168), {{a7, 1}}),
        measured(3.744, u(0.058), {{a6, 1}}),
        measured(4.391, u(0.058), {{a5, 1}}),
        measured(18.498, u(0.205), {drains[0], drains[1], drains[2]})};
    correlate(periods[0], periods[1], 0.2, 1);
    correlate(periods[2], periods[3], r_spl, 2);
    Priors begin;
    for (const double value : {46.241, 44.575, 0.525, 69.978, 10.364, 3.744, 4.391})
        begin.push_back(BulkingPrior{1 / value, std::nullopt});
    return reconcile(periods, begin);
}

}  // namespace

TEST_CASE("the steam plant whose meters agree is accepted", "[reconcile]") {
    // Reconciled values and J: COMP, general reference library; the χ² limit 7.81473 SEEN.
    const auto found = steam_plant(2.5, 2.5, 0.4);
    REQUIRE(found.fits.size() == 7);
    CHECK(found.dof == 3);
    CHECK_THAT(found.chi_square, WithinAbs(2.5370, 0.0001));
    CHECK(*found.p_value > 0.05);
    CHECK_THAT(flow(found, fdkel), WithinAbs(44.69596, 0.00002));
    CHECK_THAT(1.96 * flow_u(found, fdkel), WithinAbs(1.61062, 0.00002));
    CHECK_THAT(flow(found, v), WithinAbs(0.52450, 0.00002));
    CHECK_THAT(1.96 * flow_u(found, v), WithinAbs(0.10463, 0.00002));
    CHECK_THAT(flow(found, hk), WithinAbs(70.00496, 0.00002));
    CHECK_THAT(1.96 * flow_u(found, hk), WithinAbs(0.61514, 0.00002));
    CHECK_THAT(flow(found, a7), WithinAbs(10.36420, 0.00002));
    CHECK_THAT(1.96 * flow_u(found, a7), WithinAbs(0.13311, 0.00002));
    CHECK_THAT(flow(found, a6), WithinAbs(3.74402, 0.00002));
    CHECK_THAT(flow(found, a5), WithinAbs(4.39102, 0.00002));
    CHECK_THAT(1.96 * flow_u(found, a5), WithinAbs(0.05670, 0.00002));
}

TEST_CASE("the steam plant whose meters contradict each other is found out", "[reconcile]") {
    const auto found = steam_plant(0.8, 0.79, 0.39951);
    REQUIRE(found.fits.size() == 7);
    CHECK_THAT(found.chi_square, WithinAbs(20.3104, 0.0001));  // over 7.81473
    CHECK(*found.p_value < 0.05);
    CHECK_THAT(flow(found, fdkel), WithinAbs(44.96444, 0.00002));
    CHECK_THAT(1.96 * flow_u(found, fdkel), WithinAbs(0.57562, 0.00002));
    CHECK_THAT(flow(found, spl), WithinAbs(44.92586, 0.00002));
    CHECK_THAT(1.96 * flow_u(found, spl), WithinAbs(0.40454, 0.00002));
    CHECK_THAT(1.96 * flow_u(found, hk), WithinAbs(0.55984, 0.00002));
    CHECK_THAT(flow(found, a7), WithinAbs(10.37578, 0.00002));
}
