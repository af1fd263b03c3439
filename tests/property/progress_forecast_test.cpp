// SPDX-License-Identifier: GPL-3.0-or-later
// A log whose weeks are all alike has only one future: the day on which the forecast says that a limit is met
// must be the first evening on which the evaluator of limits itself says so, of a season in which that future
// has happened.
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include "model/progress/forecast.h"
#include "model/unit/calendar.h"
#include "tests/unit/consent/support.h"

using namespace spoilbook;

namespace {

const std::vector<std::string> windows{
    R"({"kind":"term"})",
    R"({"kind":"calendar","unit":"month"})",
    R"({"kind":"calendar","unit":"week"})",
    R"({"kind":"calendar","unit":"year"})",
    R"({"kind":"consent_year"})",
    R"({"kind":"rolling","n":30,"unit":"days"})",
    R"({"kind":"rolling","n":2,"unit":"months"})",
    R"({"kind":"phase","from":"2025-09-20","to":"2025-11-05"})",
};

constexpr Day first_day{2025, 8, 4};

void add_day(SmallSeason& small, int number, int loads) {
    for (int k = 0; k < loads; ++k) {
        const Instant at =
            small.season.zone.day_start(plus_days(first_day, number)) + (6 + 2 * k) * ms_per_hour;
        Load load;
        load.id = small.id();
        load.stated_in_situ_m3 = 100;
        load.loading_start = at - ms_per_hour;
        load.loading_end = at;
        small.season.loads.add(load);
        Trip trip;
        trip.id = small.id();
        trip.load = load.id;
        trip.release_end = at;
        small.season.trips.add(trip);
    }
}

std::string condition_of(const std::string& measure, double value, const std::string& window) {
    return R"({"measure":")" + measure + R"(","op":"at_most","value":)" + std::to_string(value) +
           R"(,"window":)" + window + "}";
}

}  // namespace

TEST_CASE("the day on which a limit is met is the one on which the evaluator says so", "[property]") {
    CHECK(rc::check([] {
        const int weeks = *rc::gen::inRange(4, 8);
        std::vector<int> week;
        for (int i = 0; i < 7; ++i)
            week.push_back(*rc::gen::inRange(i == 0 ? 1 : 0, 4));
        const auto window = *rc::gen::elementOf(windows);
        const std::string measure =
            *rc::gen::element(std::string("in_situ_m3"), std::string("trips"), std::string("days"));
        const int logged = 7 * weeks + *rc::gen::inRange(0, 7);
        const double unit = measure == "in_situ_m3" ? 100 : 1;
        const double value = unit * (*rc::gen::inRange(1, 160) + 0.5);
        constexpr int ahead = 70;

        SmallSeason now;
        SmallSeason later;
        for (auto* season : {&now, &later}) {
            Claim claim;
            claim.id = season->id();
            claim.planned_in_situ_m3 = 1e7;
            season->season.claims.add(claim);
            season->condition("L", condition_of(measure, value, window).c_str());
        }
        for (int i = 0; i < logged + ahead; ++i) {
            if (i < logged) add_day(now, i, week[static_cast<std::size_t>(i % 7)]);
            add_day(later, i, week[static_cast<std::size_t>(i % 7)]);
        }
        const Zone& zone = now.season.zone;
        ForecastAsked asked;
        asked.as_at = zone.day_start(plus_days(first_day, logged)) - 1;
        asked.draws = 3;
        asked.days = ahead;
        const Ledger known(now.season);
        const auto made = forecast(known, asked);
        RC_ASSERT(made.why_none.empty());

        const Ledger whole(later.season);
        std::optional<Day> met;
        for (int i = logged; i < logged + ahead && !met; ++i) {
            const auto states = limits_at(whole, zone.day_start(plus_days(first_day, i + 1)) - 1);
            if (states.at(0).used > *states.at(0).limit) met = plus_days(first_day, i);
        }
        RC_ASSERT(made.limits.at(0).dates.p50 == met);
        RC_ASSERT(made.limits.at(0).dates.p10 == met);
    }));
}
