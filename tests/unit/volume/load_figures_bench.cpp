// SPDX-License-Identifier: GPL-3.0-or-later
// Sizes: 150 000 loads, 3 tally lines each, 4 dips each, every tenth with draughts; ids and numbers by a
// fixed rule. Run by hand: test_volume "[bench]"
#include <catch2/catch.hpp>

#include <ctime>
#include <iostream>

#include "tests/unit/volume/a_season.h"

using namespace spoilbook;
using namespace spoilbook::test;

namespace {

constexpr unsigned load_count = 150000;

Id wide(unsigned kind, unsigned n) {
    Id made = id(kind);
    for (unsigned i = 0; i < 4; ++i)
        made.bytes[8 + i] = static_cast<std::uint8_t>(n >> (8 * i));
    return made;
}

Season large_season() {
    ASeason a;
    for (unsigned i = 0; i < 20; ++i)
        a.revise("bulking", i % 2 == 0 ? sand : clay, hours(10 * i), 1.2 + 0.01 * i, 0.05);
    Season season = a.made();
    season.loads.reserve(load_count + 1);
    season.tallies.reserve(3UL * load_count);
    for (unsigned i = 0; i < load_count; ++i) {
        Load load = a.load;
        load.id = wide(1000, i);
        load.loading_end = hours(i / 500);
        load.dips_m = {1.2 + 0.001 * (i % 700), 1.25, 1.3, 1.35};
        if (i % 10 == 0) {
            load.light_draughts_m = std::vector<double>(6, 1.0);
            load.full_draughts_m = std::vector<double>(6, 2.0 + 0.001 * (i % 300));
        }
        season.loads.add(load);
        for (unsigned k = 0; k < 3; ++k) {
            Tally tally;
            tally.id = wide(2000 + k, i);
            tally.load = load.id;
            tally.station = id((i + k) % 7 == 0 ? in_c2 : in_c1);
            tally.bucket = id(general);
            tally.count = 20 + i % 9;
            season.tallies.add(tally);
        }
    }
    return season;
}

}  // namespace

TEST_CASE("the figures of 150 000 loads", "[.][bench]") {
    const Season season = large_season();
    const auto start = std::clock();
    Sources sources;
    const LoadIndex index(season, sources);
    const auto indexed = std::clock();
    Total total;
    for (const Load& load : season.loads.rows()) {
        const LoadFigures figure = figures(index, load);
        if (const auto* counted = figure.counted_by()) total.add(*counted->in_situ_m3);
    }
    const auto worked = std::clock();
    const auto seconds = [](std::clock_t from, std::clock_t to) {
        return static_cast<double>(to - from) / CLOCKS_PER_SEC;
    };
    std::cout << "index " << seconds(start, indexed) << " s, figures " << seconds(indexed, worked)
              << " s of processor time\n";
    CHECK(total.value() > 150000 * 100.0);
    CHECK(total.estimate().u() / total.value() > 0.01);
}
