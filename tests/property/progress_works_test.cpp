// SPDX-License-Identifier: GPL-3.0-or-later
// More plant never slows the works, and a longer haul never quickens them.
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include "model/progress/works_supposed.h"

using namespace spoilbook;

namespace {

Spread always(double minutes) {
    return {1, minutes, minutes, minutes};
}

WorksLogged any_works() {
    WorksLogged logged;
    const double fill = *rc::gen::inRange(1, 400);
    const double change = *rc::gen::inRange(0, 60);
    const double round_trip = *rc::gen::inRange(1, 900);
    logged.pace.fill = always(fill);
    logged.pace.change = always(change);
    logged.pace.round_trip = always(round_trip);
    logged.pace.tugs = static_cast<std::size_t>(*rc::gen::inRange(1, 5));
    logged.pace.barges = static_cast<std::size_t>(*rc::gen::inRange(1, 8));
    allow(logged.pace, fill, change, round_trip);
    logged.pattern = ShiftPattern{*rc::gen::inRange(1, 240) / 10.0, *rc::gen::inRange(1, 70) / 10.0, 50};
    logged.tow = TowSpeed{always(*rc::gen::inRange(1, 20)), always(*rc::gen::inRange(1, 20))};
    return logged;
}

WorksSupposed any_supposed() {
    WorksSupposed supposed;
    supposed.barges = *rc::gen::inRange(1, 9);
    supposed.tugs = *rc::gen::inRange(1, 6);
    supposed.haul_more_km = *rc::gen::inRange(0, 30);
    supposed.hours_a_day = *rc::gen::inRange(1, 241) / 10.0;
    return supposed;
}

double weekly(const WorksLogged& logged, const WorksSupposed& supposed) {
    const auto to_be = suppose(logged, supposed);
    return to_be->supposed.rate_factor * to_be->supposed.hours_factor;
}

}  // namespace

TEST_CASE("more barges, tugs or hours never slow the works, a longer haul never quickens them",
          "[property]") {
    CHECK(rc::check([] {
        const auto logged = any_works();
        const auto supposed = any_supposed();
        const double as_it_is = weekly(logged, supposed);
        auto more = supposed;
        more.barges = *more.barges + *rc::gen::inRange(0, 4);
        RC_ASSERT(weekly(logged, more) >= as_it_is);
        more.tugs = *more.tugs + *rc::gen::inRange(0, 4);
        RC_ASSERT(weekly(logged, more) >= as_it_is);
        more.hours_a_day = std::min(24.0, *more.hours_a_day + 1);
        RC_ASSERT(weekly(logged, more) >= as_it_is);
        auto far = supposed;
        far.haul_more_km = *far.haul_more_km + *rc::gen::inRange(0, 50);
        RC_ASSERT(weekly(logged, far) <= as_it_is);
        // No number of barges and tugs digs faster than the dredger.
        more.barges = 1000;
        more.tugs = 1000;
        RC_ASSERT(suppose(logged, more)->pace.governs() == Governs::dredger);
    }));
}

TEST_CASE("the works named as they are logged suppose nothing", "[property]") {
    CHECK(rc::check([] {
        const auto logged = any_works();
        WorksSupposed same;
        same.barges = static_cast<int>(logged.pace.barges);
        same.tugs = static_cast<int>(logged.pace.tugs);
        same.hours_a_day = logged.pattern->hours_a_day;
        same.days_a_week = logged.pattern->days_a_week;
        same.haul_more_km = 0;
        same.round_trip_more_min = 0;
        RC_ASSERT(suppose(logged, same)->supposed == Supposed{});
    }));
}
