// SPDX-License-Identifier: GPL-3.0-or-later
// Sums over many loads: what they share adds as it stands, what each has of its own in squares.
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include "tests/unit/volume/a_season.h"

using namespace spoilbook;
using namespace spoilbook::test;

namespace {

/// What one load was read as.
struct Reading {
    unsigned material = sand;
    std::vector<double> dips;
    std::optional<double> buckets, stated;
};

double between(int low, int high) {
    return 0.01 * *rc::gen::inRange(low * 100, high * 100 + 1);
}

Reading some_reading() {
    Reading reading;
    reading.material = *rc::gen::element(sand, clay);
    switch (*rc::gen::inRange(0, 3)) {
        case 0:
            for (int i = *rc::gen::inRange(1, 6); i > 0; --i)
                reading.dips.push_back(between(1, 2));
            break;
        case 1:
            reading.buckets = *rc::gen::inRange(1, 90);
            break;
        default:
            reading.stated = between(50, 400);
    }
    return reading;
}

std::vector<Reading> some_readings() {
    std::vector<Reading> readings(static_cast<std::size_t>(*rc::gen::inRange(2, 12)));
    for (auto& reading : readings)
        reading = some_reading();
    return readings;
}

/// The total in situ of these loads in this order, by the method that counts, names of sources beside.
struct Summed {
    Sources sources;
    Estimate in_situ;

    explicit Summed(const std::vector<Reading>& readings) {
        ASeason base;
        base.load.rejected = "not of the sum";
        Season season = base.made();
        unsigned n = 1000;
        for (const Reading& reading : readings) {
            Load load;
            load.id = id(++n);
            load.barge = id(teal);
            load.material = id(reading.material);
            load.loading_end = hours(100);
            load.dips_m = reading.dips;
            load.stated_hopper_m3 = reading.stated;
            season.loads.add(load);
            if (!reading.buckets) continue;
            Tally tally;
            tally.id = id(n + 1000);
            tally.load = load.id;
            tally.station = id(in_c1);
            tally.bucket = id(general);
            tally.count = reading.buckets;
            season.tallies.add(tally);
        }
        const LoadIndex index(season, sources);
        Total total;
        for (const Load& load : season.loads.rows()) {
            if (load.rejected.empty()) total.add(*figures(index, load).counted_by()->in_situ_m3);
        }
        in_situ = total.estimate();
    }
    [[nodiscard]] double shared(const std::string& source) const {
        for (const auto& part : in_situ.shared) {
            if (sources.name(part.source) == source) return part.amount;
        }
        return 0;
    }
};

bool near(double a, double b) {
    return std::fabs(a - b) <= 1e-9 * std::max({1.0, std::fabs(a), std::fabs(b)});
}

bool alike(const Summed& a, const Summed& b) {
    return near(a.in_situ.value, b.in_situ.value) && near(a.in_situ.u_random, b.in_situ.u_random) &&
           near(a.in_situ.u(), b.in_situ.u());
}

}  // namespace

TEST_CASE("totals do not depend on the order in which loads were entered", "[property]") {
    CHECK(rc::check([] {
        auto readings = some_readings();
        const Summed before(readings);
        std::reverse(readings.begin(), readings.end());
        std::rotate(readings.begin(), readings.begin() + 1, readings.end());
        RC_ASSERT(alike(before, Summed(readings)));
    }));
}

TEST_CASE("n like loads: root n of what is random, n of what is shared", "[property]") {
    CHECK(rc::check([] {
        const Reading reading = some_reading();
        const auto n = static_cast<std::size_t>(*rc::gen::inRange(1, 60));
        const Summed one({reading});
        const Summed all(std::vector<Reading>(n, reading));
        const auto times = static_cast<double>(n);
        RC_ASSERT(near(all.in_situ.value, times * one.in_situ.value));
        const double shared_squares = std::pow(one.in_situ.u(), 2) - std::pow(one.in_situ.u_random, 2);
        const double squares = times * std::pow(one.in_situ.u_random, 2) + times * times * shared_squares;
        RC_ASSERT(near(all.in_situ.u(), std::sqrt(squares)));
    }));
}

TEST_CASE("a tally's load split over two barges, or two merged into one, is the same spoil", "[property]") {
    CHECK(rc::check([] {
        Reading whole;
        whole.material = *rc::gen::element(sand, clay);
        whole.buckets = *rc::gen::inRange(2, 90);
        Reading first = whole, second = whole;
        first.buckets = *rc::gen::inRange(1, static_cast<int>(*whole.buckets));
        second.buckets = *whole.buckets - *first.buckets;
        RC_ASSERT(alike(Summed({whole}), Summed({first, second})));
    }));
}

TEST_CASE("all stated volumes scaled by one factor scale total and uncertainty", "[property]") {
    CHECK(rc::check([] {
        std::vector<Reading> readings(static_cast<std::size_t>(*rc::gen::inRange(1, 9)));
        for (auto& reading : readings) {
            reading.material = *rc::gen::element(sand, clay);
            reading.stated = between(50, 200);
        }
        const Summed before(readings);
        const double scale = between(1, 3);
        for (auto& reading : readings)
            reading.stated = *reading.stated * scale;
        const Summed after(readings);
        RC_ASSERT(near(after.in_situ.value, scale * before.in_situ.value));
        RC_ASSERT(near(after.in_situ.u(), scale * before.in_situ.u()));
    }));
}

TEST_CASE("a total is never surer than the bulking factor of its loads", "[property]") {
    CHECK(rc::check([] {
        auto readings = some_readings();
        for (auto& reading : readings)
            reading.material = sand;
        const Summed all(readings);
        // 4 % is the sand's factor: 0.05 of 1.25.
        RC_ASSERT(near(-all.shared("bulking factor of sand, materials.csv"), 0.04 * all.in_situ.value));
        RC_ASSERT(all.in_situ.u() >= 0.04 * all.in_situ.value * (1 - 1e-9));
    }));
}
