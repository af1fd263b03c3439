// SPDX-License-Identifier: GPL-3.0-or-later
// First-order uncertainties against 100 000 seeded draws of every input (JCGM 101:2008), the inputs being
// what the records say: factors, dips and draughts.
#include <catch2/catch.hpp>

#include <array>
#include <cmath>
#include <random>

#include "model/volume/dips.h"
#include "tests/unit/volume/a_season.h"

using namespace spoilbook;
using namespace spoilbook::test;

namespace {

#ifdef NDEBUG
constexpr int draws = 100000;
#else
constexpr int draws =
    20000;  // builds for the debugger and the sanitizers are slow; the spread of u is then 0.5 %
#endif

class Spread {
 public:
    void add(double x) {
        ++n_;
        const double d = x - mean_;
        mean_ += d / n_;
        squares_ += d * (x - mean_);
    }
    [[nodiscard]] double mean() const { return mean_; }
    [[nodiscard]] double u() const { return std::sqrt(squares_ / (n_ - 1)); }

 private:
    double n_ = 0, mean_ = 0, squares_ = 0;
};

/// Two claims of two materials, water on top, a light reading: every method, in one load.
ASeason mixed() {
    ASeason a;
    a.lines = {{in_c1, 40}, {in_c2, 35, ripping}};
    a.barge.ullage_table = {{0, 420}, {1.2, 310}, {3, 60}};
    a.load.dips_m = {1.5, 1.7, 1.6, 1.6};
    a.load.water_on_top_m = 0.1;
    a.load.full_draughts_m = std::vector<double>(6, 2.5);
    a.load.light_draughts_m = std::vector<double>(6, 1.3);
    a.load.stated_hopper_m3 = 220;
    a.revise("situ_density", sand, hours(1), 1.9, 0.02);
    a.revise("grain_density", sand, hours(1), 2.65, 0.02);
    return a;
}

class Drawer {
 public:
    double normal(double value, double u) { return value + u * standard_(engine_); }
    /// The mixed load with every uncertain input drawn anew.
    ASeason draw(const ASeason& from) {
        ASeason a = from;
        for (Material& m : a.materials) {
            m.bulking_factor = normal(*m.bulking_factor, *m.bulking_factor_u);
            m.fill_factor = normal(*m.fill_factor, *m.fill_factor_u);
        }
        for (Factor& f : a.factors)
            f.value = normal(*f.value, *f.u);
        const double reading = normal(0, *from.barge.ullage_u_m);
        for (double& dip : a.load.dips_m)
            dip += reading + normal(0, 0.0816496581);  // the sample's own scatter
        const double full = normal(0, *from.barge.draught_u_m), light = normal(0, *from.barge.draught_u_m);
        for (double& mark : a.load.full_draughts_m)
            mark += full;
        for (double& mark : a.load.light_draughts_m)
            mark += light;
        return a;
    }

 private:
    std::mt19937_64 engine_{20250804};
    std::normal_distribution<double> standard_;
};

constexpr std::array measures{Measure::hopper_m3, Measure::in_situ_m3, Measure::wet_t, Measure::dry_t};

}  // namespace

TEST_CASE("each method's uncertainty is what the inputs make of it", "[monte_carlo]") {
    const ASeason a = mixed();
    const Worked w(a);
    REQUIRE(w.figures.methods.size() == 4);
    std::array<std::array<Spread, 4>, 4> spread;
    std::array<Spread, 4> sand_part;
    Drawer drawer;
    for (int i = 0; i < draws; ++i) {
        const Worked drawn(drawer.draw(a));
        for (std::size_t m = 0; m < 4; ++m) {
            for (std::size_t k = 0; k < 4; ++k)
                spread.at(m).at(k).add(drawn.figures.methods[m].of(measures.at(k))->value);
            sand_part.at(m).add(drawn.figures.methods[m].part(0).in_situ_m3->value);
        }
    }
    for (std::size_t m = 0; m < 4; ++m) {
        for (std::size_t k = 0; k < 4; ++k) {
            const Estimate& said = *w.figures.methods[m].of(measures.at(k));
            CAPTURE(method_name(w.figures.methods[m].method), measure_name(measures.at(k)));
            CHECK(std::fabs(spread.at(m).at(k).u() - said.u()) <= 0.015 * said.u() + 1e-9);
            CHECK(std::fabs(spread.at(m).at(k).mean() - said.value) <= 0.15 * said.u() + 1e-9);
        }
        const Estimate& said = *w.figures.methods[m].part(0).in_situ_m3;
        CHECK(std::fabs(sand_part.at(m).u() - said.u()) <= 0.015 * said.u());
    }
}

TEST_CASE("at a kink of the ullage table the first order is off by no more than the slopes differ",
          "[monte_carlo]") {
    const LinearTable table({{0, 420}, {1, 320}, {2, 200}, {3, 60}});
    const double u = 0.03;
    std::mt19937_64 engine{7};
    std::normal_distribution<double> standard;
    for (const double depth : {1.5, 1.94, 1.97, 2.0, 2.03, 2.06}) {
        Spread spread;
        for (int i = 0; i < 100000; ++i)
            spread.add(table.at(depth + u * standard(engine))->y);
        const double said = hopper_at(table, Uncertain::random(depth, u, RandomInput::dip_scatter))->u();
        CAPTURE(depth);
        CHECK(spread.u() >= 120 * u * 0.99);
        CHECK(spread.u() <= 140 * u * 1.01);
        // Two standard uncertainties away the kink is not felt; on it, half of the difference of slopes is.
        const double share = std::fabs(depth - 2) >= 2 * u - 1e-9 ? 0.01 : 0.09;
        CHECK(std::fabs(said - spread.u()) <= share * spread.u());
    }
}
