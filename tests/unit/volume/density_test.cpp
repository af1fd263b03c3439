// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/density.h"

#include <catch2/catch.hpp>

using Catch::Matchers::WithinAbs;
using spoilbook::seawater_density_t_m3;

namespace {

struct Row {
    const char* source;
    double salinity, t68_c, kg_m3, tolerance;
};

}  // namespace

TEST_CASE("the density of sea water is EOS-80's, to the last printed digit", "[density]") {
    const auto row = GENERATE(values<Row>({
        {"SEEN UNESCO 44 (1983) p. 19", 0, 5, 999.96675, 0.000005},
        {"SEEN UNESCO 44 (1983) p. 19", 0, 25, 997.04796, 0.000005},
        {"SEEN UNESCO 44 (1983) p. 19", 35, 5, 1027.67547, 0.000005},
        {"SEEN UNESCO 44 (1983) p. 19", 35, 25, 1023.34306, 0.000005},
        {"COMP from the coefficients, float64", 40, 0, 1032.14710, 0.00001},
        {"COMP from the coefficients, float64", 40, 40, 1021.67879, 0.00001},
        {"COMP from the coefficients, float64", 34.5, 12, 1026.20127, 0.00001},
        {"COMP from the coefficients, float64", 30, 18, 1021.44805, 0.00001},
        {"COMP from the coefficients, float64", 10, 10, 1007.50114, 0.00001},
        {"MEM t68 = 1.00024 t90 (Saunders 1990), COMP", 35, 1.00024 * 25, 1023.34123, 0.00001},
    }));
    CAPTURE(row.source, row.salinity, row.t68_c);
    CHECK_THAT(seawater_density_t_m3(row.salinity, row.t68_c).value() * 1000,
               WithinAbs(row.kg_m3, row.tolerance));
}

TEST_CASE("EOS-80 and TEOS-10 differ by less than 0.005 kg/m3 in harbour water", "[density]") {
    // COMP python3-gsw 3.6.16, S 33 and t90 15 °C: 1024.434796 kg/m³
    CHECK_THAT(seawater_density_t_m3(33, 1.00024 * 15).value() * 1000, WithinAbs(1024.434796, 0.005));
}

TEST_CASE("salinity and temperature outside the range of EOS-80 give no density", "[density]") {
    CHECK_FALSE(seawater_density_t_m3(-0.1, 10));
    CHECK_FALSE(seawater_density_t_m3(42.1, 10));
    CHECK_FALSE(seawater_density_t_m3(35, -2.1));
    CHECK_FALSE(seawater_density_t_m3(35, 40.1));
    CHECK(seawater_density_t_m3(42, 40));
    CHECK(seawater_density_t_m3(0, -2));
}
