// SPDX-License-Identifier: GPL-3.0-or-later
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include "tests/unit/volume/a_season.h"

using namespace spoilbook;
using namespace spoilbook::test;

namespace {

constexpr std::array measures{Measure::hopper_m3, Measure::in_situ_m3, Measure::wet_t, Measure::dry_t};

double between(int low, int high) {
    return 0.01 * *rc::gen::inRange(low * 100, high * 100 + 1);
}

/// One to six lines of two stations, two buckets, own or claim's material.
std::vector<Line> some_lines() {
    std::vector<Line> lines(static_cast<std::size_t>(*rc::gen::inRange(1, 7)));
    for (Line& line : lines) {
        line.station = *rc::gen::element(in_c1, in_c2);
        line.bucket = *rc::gen::element(general, ripping);
        line.material = *rc::gen::element(0U, sand, clay);
        line.count = *rc::gen::inRange(1, 60);
    }
    return lines;
}

ASeason some_load() {
    ASeason a;
    a.lines = some_lines();
    for (int i = *rc::gen::inRange(1, 6); i > 0; --i)
        a.load.dips_m.push_back(between(1, 2));
    a.load.full_draughts_m = std::vector<double>(6, between(3, 4));
    a.load.light_draughts_m = std::vector<double>(6, between(1, 2));
    return a;
}

bool near(double a, double b) {
    return std::fabs(a - b) <= 1e-9 * std::max({1.0, std::fabs(a), std::fabs(b)});
}

bool alike(const Estimate& a, const Estimate& b) {
    return near(a.value, b.value) && near(a.u_random, b.u_random) && near(a.u(), b.u());
}

bool alike(const LoadFigures& a, const LoadFigures& b) {
    if (a.methods.size() != b.methods.size()) return false;
    for (std::size_t m = 0; m < a.methods.size(); ++m) {
        for (const Measure measure : measures) {
            const auto& x = a.methods[m].of(measure);
            const auto& y = b.methods[m].of(measure);
            if (x.has_value() != y.has_value() || (x && !alike(*x, *y))) return false;
        }
    }
    return true;
}

}  // namespace

TEST_CASE("the order of tally lines, and of dips, changes nothing", "[property]") {
    CHECK(rc::check([] {
        ASeason a = some_load();
        const Worked before(a);
        std::reverse(a.lines.begin(), a.lines.end());
        std::rotate(a.load.dips_m.begin(), a.load.dips_m.begin() + 1, a.load.dips_m.end());
        RC_ASSERT(alike(before.figures, Worked(a).figures));
    }));
}

TEST_CASE("a tally line written as two changes nothing", "[property]") {
    CHECK(rc::check([] {
        ASeason a = some_load();
        const Worked before(a);
        Line second = a.lines.front();
        const double first = *rc::gen::inRange(0, static_cast<int>(*second.count) + 1);
        second.count = *second.count - first;
        a.lines.front().count = first;
        a.lines.push_back(second);
        const Worked after(a);
        RC_ASSERT(alike(before.figures, after.figures));
        RC_ASSERT(before.figures.parts.size() == after.figures.parts.size());
    }));
}

TEST_CASE("the parts of a load add up to it in every measure, with its uncertainty", "[property]") {
    CHECK(rc::check([] {
        const Worked w(some_load());
        for (const MethodResult& result : w.figures.methods) {
            for (const Measure measure : measures) {
                if (!result.of(measure)) continue;
                Estimate sum;
                for (std::size_t i = 0; i < w.figures.parts.size(); ++i)
                    sum = together(sum, *result.part(i).of(measure));
                RC_ASSERT(near(sum.value, result.of(measure)->value));
                for (const auto& part : result.of(measure)->shared)
                    RC_ASSERT(near(w.shared(sum, w.sources.name(part.source)), part.amount));
                // Fully dependent parts can only be surer together than they look apart.
                RC_ASSERT(sum.u_random >= result.of(measure)->u_random * (1 - 1e-9));
            }
        }
    }));
}

TEST_CASE("the shares of a load are between 0 and 1 and add up to 1", "[property]") {
    CHECK(rc::check([] {
        const Worked w(some_load());
        double hopper = 0, in_situ = 0;
        for (const LoadPart& part : w.figures.parts) {
            RC_ASSERT(part.hopper_share > 0);
            RC_ASSERT(part.hopper_share <= 1 + 1e-12);
            hopper += part.hopper_share;
            in_situ += *part.in_situ_share;
        }
        RC_ASSERT(near(hopper, 1));
        RC_ASSERT(near(in_situ, 1));
    }));
}

TEST_CASE("of one material the loads of a tally merge: twice the buckets are twice the load", "[property]") {
    CHECK(rc::check([] {
        ASeason a = some_load();
        const Worked before(a);
        for (Line& line : a.lines)
            line.count = *line.count * 2;
        const Worked after(a);
        for (const Measure measure : measures)
            RC_ASSERT(alike(*before.by(Method::tally).of(measure) * 2, *after.by(Method::tally).of(measure)));
    }));
}

TEST_CASE("a deeper dip is never a fuller hopper, nor dry solids heavier than the wet load", "[property]") {
    CHECK(rc::check([] {
        ASeason a = some_load();
        const Worked before(a);
        for (double& dip : a.load.dips_m)
            dip += 0.25;
        const Worked after(a);
        RC_ASSERT(after.by(Method::ullage).hopper_m3->value < before.by(Method::ullage).hopper_m3->value);
        for (const Method method : {Method::ullage, Method::tally})
            RC_ASSERT(before.by(method).dry_t->value < before.by(method).wet_t->value);
    }));
}

TEST_CASE("a table read from either end is the same table", "[property]") {
    CHECK(rc::check([] {
        ASeason a = some_load();
        const Worked before(a);
        std::reverse(a.barge.ullage_table.begin(), a.barge.ullage_table.end());
        std::reverse(a.barge.hydrostatic_table.begin(), a.barge.hydrostatic_table.end());
        RC_ASSERT(alike(before.figures, Worked(a).figures));
    }));
}
