// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>

#include "model/answer/turbidity.h"

using namespace spoilbook;

namespace {

Instant hour(int n) {
    return Instant{1'772'366'400'000} + n * ms_per_hour;
}

Id id_of(int n) {
    Id id;
    id.bytes[15] = static_cast<unsigned char>(n);
    return id;
}

void add_load(Season& season, int n, int from, std::optional<int> to) {
    Load load;
    load.id = id_of(n);
    load.loading_start = hour(from);
    if (to) load.loading_end = hour(*to);
    season.loads.add(load);
}

void add_shift(Season& season, int n, int from, int to) {
    Shift shift;
    shift.id = id_of(n);
    shift.start = hour(from);
    shift.end = hour(to);
    season.shifts.add(shift);
}

std::vector<Period> sorted(std::vector<Period> periods) {
    std::sort(periods.begin(), periods.end());
    return periods;
}

}  // namespace

TEST_CASE("digging is loading while a shift ran", "[turbidity]") {
    Season season;
    add_shift(season, 1, 6, 18);
    add_shift(season, 2, 30, 42);
    add_load(season, 11, 8, 11);
    add_load(season, 12, 16, 32);            // half full overnight
    add_load(season, 13, 50, 52);            // nobody wrote a shift down
    add_load(season, 14, 40, std::nullopt);  // not full yet
    add_load(season, 15, 70, 72);            // after the as-at
    CHECK(sorted(digging_periods(season, hour(60))) == std::vector<Period>{{hour(8), hour(11)},
                                                                           {hour(16), hour(18)},
                                                                           {hour(30), hour(32)},
                                                                           {hour(40), hour(42)},
                                                                           {hour(50), hour(52)}});
}
