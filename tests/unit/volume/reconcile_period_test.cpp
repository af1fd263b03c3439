// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/reconcile_period.h"

#include <catch2/catch.hpp>

using namespace spoilbook;
using Catch::Matchers::WithinAbs;

namespace {

/// 10 000 m³ removed, and barges that held 12 500 m³ of one material: B would be 1.25.
ClaimPeriod one() {
    ClaimPeriod period;
    period.removed = {10000, 150};
    period.barges_m3 = {10000, 200, {}};
    period.bulked = {{0, {12500, 0, {}}}};
    return period;
}

}  // namespace

TEST_CASE("the bed's side is what was removed, what slid in and what came from outside", "[reconcile]") {
    ClaimPeriod period = one();
    period.infill = {800, 60};
    period.outside = {200, 20};
    const auto found = balance(period);
    CHECK_THAT(found.bed.value, WithinAbs(11000, 1e-9));
    CHECK_THAT(found.bed.u, WithinAbs(162.7882, 0.00005));  // √(150² + 60² + 20²), by hand
    CHECK_THAT(found.difference.value, WithinAbs(-1000, 1e-9));
}

TEST_CASE("barges and bed disagree where E_n is over 1", "[reconcile]") {
    // By hand from ISO 13528's definition: |11 000 − 10 000| / √(400² + 300²) = 2, U being 400 and 300 m³.
    ClaimPeriod period = one();
    period.barges_m3.value = 11000;
    CHECK_THAT(*balance(period).e_n, WithinAbs(2, 1e-12));
    period.barges_m3.value = 10500;  // 500 / 500: just agrees
    CHECK_THAT(*balance(period).e_n, WithinAbs(1, 1e-12));
    period.removed.u = 0;
    period.barges_m3.u_random = 0;
    CHECK_FALSE(balance(period).e_n.has_value());
}

TEST_CASE("the bulking factor that closes one claim-period is its hopper volume over the bed's",
          "[reconcile]") {
    ClaimPeriod period = one();
    period.removed = {9615, 0};
    period.infill = {0, 192.3};
    period.bulked[0].hopper_m3.u_random = 125;
    const auto closing = balance(period).closing_factor;
    REQUIRE(closing);
    CHECK_THAT(closing->value, WithinAbs(1.3000520, 5e-8));  // 12 500 / 9615
    // 2 % of the bed and 1 % of the hopper make 2.236 % of the factor.
    CHECK_THAT(closing->u / closing->value, WithinAbs(0.02236068, 5e-9));
}

TEST_CASE("what was weighed does not hang on the bulking factor and is taken off first", "[reconcile]") {
    ClaimPeriod period = one();
    period.weighed_m3 = {2000, 0, {}};
    CHECK_THAT(balance(period).closing_factor->value, WithinAbs(1.5625, 1e-12));  // 12 500 / 8000
    period.weighed_m3.value = 10000;
    CHECK_FALSE(balance(period).closing_factor.has_value());
    period.bulked.clear();
    period.weighed_m3.value = 0;
    CHECK_FALSE(balance(period).closing_factor.has_value());
}

TEST_CASE("the fill factor that all loads share does not shrink with their number", "[reconcile]") {
    ClaimPeriod period = one();
    period.removed.u = 0;
    period.bulked[0].hopper_m3.add_shared(4, 375);  // 3 %
    CHECK_THAT(balance(period).closing_factor->u, WithinAbs(0.0375, 1e-12));
}
