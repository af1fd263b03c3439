// SPDX-License-Identifier: GPL-3.0-or-later
// JCGM 100:2008 (GUM), H.1, the calibration of an end gauge, through the propagation that loads use. Inputs
// and printed results SEEN, the second-order 34 nm MEM. Lengths in nm.
#include <catch2/catch.hpp>
#include <cmath>

#include "model/volume/quantiles.h"
#include "model/volume/uncertain.h"

using namespace spoilbook;
using Catch::Matchers::WithinAbs;

namespace {

struct Gauge {
    Uncertain standard = Uncertain::shared(50.000623e6, 25, 0);
    // Repeated observations 5.8 nm, comparator's random 3.9 and systematic effects 6.7.
    Uncertain difference =
        Uncertain::shared(215, 5.8, 1) + Uncertain::shared(0, 3.9, 2) + Uncertain::shared(0, 6.7, 3);
    Uncertain expansion = Uncertain::shared(11.5e-6, 1.2e-6, 4);
    Uncertain expansion_difference = Uncertain::shared(0, 0.58e-6, 5);
    // Mean temperature's deviation −0.1 °C, u 0.2; its cyclic variation 0.35 °C.
    Uncertain deviation = Uncertain::shared(-0.1, 0.2, 6) + Uncertain::shared(0, 0.35, 7);
    Uncertain temperature_difference = Uncertain::shared(0, 0.029, 8);

    [[nodiscard]] Uncertain length() const {
        return standard + difference -
               standard * (expansion_difference * deviation + expansion * temperature_difference);
    }
};

double part_of(const Uncertain& value, SourceId source) {
    for (const auto& part : value.estimate().shared) {
        if (part.source == source) return std::fabs(part.amount);
    }
    return 0;
}

}  // namespace

TEST_CASE("the end gauge comes out to the GUM's printed digits", "[uncertain]") {
    const Gauge gauge;
    const Uncertain length = gauge.length();
    CHECK_THAT(length.value() / 1e6, WithinAbs(50.000838, 0.0000005));
    CHECK_THAT(gauge.difference.u(), WithinAbs(9.7, 0.05));
    CHECK_THAT(part_of(length, 5), WithinAbs(2.9, 0.05));
    CHECK_THAT(part_of(length, 8), WithinAbs(16.6, 0.1));  // 16.675 unrounded: the GUM cuts it
    CHECK(part_of(length, 4) == 0);  // first order: the expansion of a gauge at the same temperature
    CHECK_THAT(length.u(), WithinAbs(32, 0.5));
    CHECK_THAT(length.u(), WithinAbs(31.71, 0.005));
}

TEST_CASE("the end gauge's 99 % is 93 nm", "[uncertain]") {
    const Uncertain length = Gauge().length();
    // Welch-Satterthwaite: degrees of freedom 18, 25.6, 50 and 2 as the GUM gives them.
    const double difference = Gauge().difference.u();
    const double sum = std::pow(25, 4) / 18 + std::pow(difference, 4) / 25.6 +
                       std::pow(part_of(length, 5), 4) / 50 + std::pow(part_of(length, 8), 4) / 2;
    const double dof = std::pow(length.u(), 4) / sum;
    CHECK_THAT(dof, WithinAbs(16.7, 0.06));  // the GUM goes on with 9.7 and 31.7: its digit is no finer
    const double k = student_t_quantile(0.995, std::floor(dof));
    CHECK_THAT(k, WithinAbs(2.92, 0.005));
    CHECK_THAT(k * length.u(), WithinAbs(93, 0.6));
}
