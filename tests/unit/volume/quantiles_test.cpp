// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/quantiles.h"

#include <catch2/catch.hpp>

using namespace spoilbook;
using Catch::Matchers::WithinAbs;

TEST_CASE("one in twenty scatters beyond the chi-square table", "[quantiles]") {
    // 7.81473 for 3 degrees of freedom: OpenModelica User's Guide, data reconciliation. SEEN.
    CHECK_THAT(chi_square_above(7.81473, 3), WithinAbs(0.05, 5e-7));
    CHECK(chi_square_above(0, 3) == 1.0);
}

TEST_CASE("the end gauge's coverage factor is 2.92", "[quantiles]") {
    // JCGM 100:2008 (GUM), H.1.6: t of 16 degrees of freedom at 99 %. SEEN.
    CHECK_THAT(student_t_quantile(0.995, 16), WithinAbs(2.92, 0.005));
    CHECK_THAT(normal_quantile(0.975), WithinAbs(1.96, 0.005));
}
