// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cmath>

#include "model/unit/estimate.h"
#include "model/unit/number_text.h"

using namespace spoilbook;
using Catch::Matchers::WithinAbs;

TEST_CASE("the parts of GUM H.1 add to its printed uncertainty", "[uncertainty]") {
    // JCGM 100:2008 (GUM), H.1: contributions 25, 9.7, 2.9, 16.6 nm; u_c printed as 32 nm. SEEN.
    Sources sources;
    Estimate length{50.000838e6, 0, {}};
    length.add_shared(sources.of("calibration of the standard"), 25);
    length.add_shared(sources.of("difference of lengths"), 9.7);
    length.add_shared(sources.of("thermal expansion"), 2.9);
    length.add_shared(sources.of("difference of temperatures"), 16.6);
    CHECK_THAT(length.u(), WithinAbs(32, 0.5));
}

TEST_CASE("n like loads are as sure as root n of their random part and n of their shared part",
          "[uncertainty]") {
    Sources sources;
    Estimate load{347, 3, {}};
    load.add_shared(sources.of("bulking factor of silty sand"), 8);
    Total total;
    for (int i = 0; i < 600; ++i)
        total.add(load);
    CHECK_THAT(total.estimate().value, WithinAbs(208200, 1e-9));
    CHECK_THAT(total.estimate().u(), WithinAbs(std::hypot(std::sqrt(600.0) * 3, 600 * 8), 1e-9));
}

TEST_CASE("a thousand tenths and their opposites leave nothing behind", "[uncertainty]") {
    Total total;
    total.add(Estimate{1e15, 0, {}});
    for (int i = 0; i < 1000; ++i)
        total.add(Estimate{0.1, 0, {}});
    total.add(Estimate{-1e15, 0, {}});
    CHECK_THAT(total.value(), WithinAbs(100, 1e-9));
}

TEST_CASE("the chance of being over a limit is that of the normal law", "[uncertainty]") {
    // Standard normal table (NIST/SEMATECH e-Handbook 1.3.6.7.1): P(Z > 1) = 0.15866, P(Z > 1.96) = 0.02500.
    // MEM.
    CHECK_THAT(probability_over(99, 1, 100), WithinAbs(0.15866, 0.000005));
    CHECK_THAT(probability_over(98.04, 1, 100), WithinAbs(0.02500, 0.000005));
    CHECK(probability_over(100, 0, 100) == 0.0);
    CHECK(probability_over(100.1, 0, 100) == 1.0);
}

TEST_CASE("numbers are read with a point and nothing else", "[number]") {
    for (const char* text :
         {"1,5", "1 000", "nan", "inf", "0x10", "+1", "1e999", "", "-", "1.2.3", "1'000"}) {
        INFO(text);
        CHECK(!parse_number(text));
    }
    CHECK(*parse_number("-0.5e1") == -5.0);
    CHECK(number_text(*parse_number("0.1")) == "0.1");
    CHECK(number_text(-0.0) == "0");
    CHECK(*parse_integer("12.0") == 12);
    CHECK(!parse_integer("12.5"));
}
