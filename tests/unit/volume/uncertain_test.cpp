// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/uncertain.h"

#include <catch2/catch.hpp>

using Catch::Matchers::WithinAbs;
using namespace spoilbook;

namespace {

Uncertain in(double value, double u, SourceId source) {
    return Uncertain::shared(value, u, source);
}

}  // namespace

// HP-19 to HP-30, derived in the mass balance of ERDC TN-DOER-I5 (2000) p. 8, checked by central differences:
// W 1350 ± 20 t, V_h 1000 ± 15 m³, rho_i 1.60 ± 0.03, rho_w 1.025 ± 0.002, rho_s 2.65 ± 0.02 t/m³.
TEST_CASE("in-situ volume from a weight carries its uncertainty", "[uncertain]") {
    const Uncertain w = in(1350, 20, 0), v = in(1000, 15, 1), situ = in(1.60, 0.03, 2),
                    water = in(1.025, 0.002, 3);
    const Uncertain in_situ = (w - water * v) / (situ - water);
    CHECK_THAT(in_situ.value(), WithinAbs(565.2174, 0.00005));
    CHECK_THAT(in_situ.u(), WithinAbs(52.8842, 0.00005));
    const Estimate parts = in_situ.estimate();
    REQUIRE(parts.shared.size() == 4);
    CHECK_THAT(parts.shared[1].amount / 15, WithinAbs(-1.782609, 0.000005));     // HP-21
    CHECK_THAT(parts.shared[2].amount / 0.03, WithinAbs(-982.986767, 0.0001));   // HP-22
    CHECK_THAT(parts.shared[3].amount / 0.002, WithinAbs(-756.143667, 0.0001));  // HP-23
}

TEST_CASE("dry solids from a weight carry their uncertainty", "[uncertain]") {
    const Uncertain w = in(1350, 20, 0), v = in(1000, 15, 1), water = in(1.025, 0.002, 3),
                    grain = in(2.65, 0.02, 4);
    const Uncertain dry = grain * (w - water * v) / (grain - water);
    CHECK_THAT(dry.value(), WithinAbs(530.0000, 0.00005));
    CHECK_THAT(dry.u(), WithinAbs(41.2989, 0.00005));
    const Estimate parts = dry.estimate();
    CHECK_THAT(parts.shared[1].amount / 15, WithinAbs(-1.671538, 0.00001));     // HP-27
    CHECK_THAT(parts.shared[3].amount / 0.02, WithinAbs(-126.153846, 0.0002));  // HP-28
}

TEST_CASE("the end gauge of the GUM has 32 nm", "[uncertain]") {
    // JCGM 100:2008, H.1.4, SEEN: contributions 25, 9.7, 2.9 and 16.6 nm combine to 32 nm
    const Uncertain length = in(0, 25, 0) + in(0, 9.7, 1) + in(0, 2.9, 2) - in(0, 16.6, 3);
    CHECK_THAT(length.u(), WithinAbs(32, 0.5));
}

TEST_CASE("what a figure shares with itself cancels, and does not come back as rounding", "[uncertain]") {
    const Uncertain b = in(1.3, 0.1, 7);
    const Uncertain one = (in(200, 0, 0) / b) / (Uncertain(200) / b);
    CHECK(one.value() == 1);
    CHECK(one.estimate().shared.empty());
}

TEST_CASE("random inputs of a load become its random part", "[uncertain]") {
    const Uncertain dips = Uncertain::random(1, 0.3, RandomInput::dip_scatter) +
                           Uncertain::random(0, 0.4, RandomInput::ullage_reading) + in(0, 1.2, 9);
    const Estimate estimate = dips.estimate();
    CHECK_THAT(estimate.u_random, WithinAbs(0.5, 1e-12));
    REQUIRE(estimate.shared.size() == 1);
    CHECK_THAT(estimate.u(), WithinAbs(1.3, 1e-12));
}
