// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/unit/shown.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <random>

using namespace spoilbook;

namespace {

/// The number behind the ±, as a reader reads it.
double u_read(const std::string& text) {
    const std::string sign = " ± ";
    return std::stod(text.substr(text.find(sign) + sign.size()));
}

}  // namespace

TEST_CASE("an uncertainty is never shown smaller than it is, nor a whole step larger", "[shown]") {
    std::mt19937_64 chance(3574);
    std::uniform_real_distribution<double> size(-4, 6);
    for (int i = 0; i < 20'000; ++i) {
        const double u = std::pow(10, size(chance));
        for (const auto& [decimals, step] : {std::pair{0, 1.0}, {1, 0.1}, {3, 0.001}, {4, 0.0001}}) {
            const double shown = u_read(with_u(1000, u, decimals));
            CAPTURE(u, decimals, shown);
            REQUIRE(shown >= u - 1e-5 * step);
            REQUIRE(shown < u + step * 1.00001);
        }
    }
}

TEST_CASE("an uncertainty that is on the step already stays, as does none", "[shown]") {
    CHECK(with_u(630, 12, 0) == "630 ± 12");
    CHECK(with_u(630, 11.000000000001, 0) == "630 ± 11");
    CHECK(with_u(0.3, 0.1 + 0.2, 1) == "0.3 ± 0.3");
    CHECK(with_u(630.25, 0, 1) == "630.2 ± 0.0");
    CHECK(with_u(25'219.6, 3574.2, 0) == "25220 ± 3575");
}

TEST_CASE("a chance is told as none or as certain only where it is", "[shown]") {
    CHECK(chance_text(0) == "0");
    CHECK(chance_text(1) == "100");
    CHECK(chance_text(0.125) == "12.5");
    CHECK(chance_text(1e-9) == "< 0.1");
    CHECK(chance_text(0.00099) == "< 0.1");
    CHECK(chance_text(0.9991) == "> 99.9");
    for (int i = 1; i < 100'000; ++i) {
        const std::string text = chance_text(i / 100'000.0);
        CAPTURE(i, text);
        REQUIRE(text != "0.0");
        REQUIRE(text != "100.0");
    }
}
