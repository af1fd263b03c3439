// SPDX-License-Identifier: GPL-3.0-or-later
// What if there were another barge, another tug, another shift, a longer haul or another season.
#include "model/progress/works_supposed.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "model/unit/calendar.h"
#include "tests/unit/consent/support.h"
#include "tests/unit/progress/fleet.h"

using namespace spoilbook;
using namespace spoilbook::tests;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

Spread always(double minutes) {
    return {10, minutes, minutes, minutes};
}

WorksLogged works_of(const Fleet& fleet) {
    WorksLogged logged;
    logged.pace.barges = static_cast<std::size_t>(fleet.barges);
    logged.pace.tugs = static_cast<std::size_t>(fleet.tugs);
    logged.pace.fill = always(fleet.fill);
    logged.pace.change = always(fleet.change);
    logged.pace.round_trip = always(fleet.round_trip);
    allow(logged.pace, fleet.fill, fleet.change, fleet.round_trip);
    return logged;
}

constexpr Day first_day{2025, 8, 4};

/// A season of two loads of 50 m³ a day, filled in 100 minutes, 10 apart, in a shift of 12 hours, and towed
/// there and back in 180 minutes by one tug in two barges: 90 out over 15 km, 60 home.
class TwoBarges {
 public:
    explicit TwoBarges(int days, double planned_m3) {
        small_.season.harbour.epsg = 32760;
        Claim claim;
        claim.id = small_.id();
        claim.planned_in_situ_m3 = planned_m3;
        small_.season.claims.add(claim);
        tug_ = small_.named(small_.season.tugs, &Tug::name, "Tui");
        barges_[0] = small_.named(small_.season.barges, &Barge::name, "Weka");
        barges_[1] = small_.named(small_.season.barges, &Barge::name, "Kaka");
        for (int i = 0; i < days; ++i)
            add_day(i);
        as_at_ = at(days, 0) - 1;
    }

    [[nodiscard]] Instant at(int day, int minute) const {
        return small_.season.zone.day_start(plus_days(first_day, day)) + minute * ms_per_minute;
    }

    [[nodiscard]] Checked<WorksForecast> ask(const WorksSupposed& supposed) {
        ledger_ = std::make_unique<Ledger>(small_.season);
        ForecastAsked asked;
        asked.as_at = as_at_;
        asked.draws = 100;
        return what_if(*ledger_, asked, supposed);
    }

    /// How many days from the as-at on it takes to the target, as supposed.
    [[nodiscard]] int days_to_target(const WorksSupposed& supposed) {
        const auto made = ask(supposed);
        return days_between(*made->as_supposed.target.p50, small_.season.zone.day_of(as_at_));
    }

    SmallSeason small_;

 private:
    void add_day(int day) {
        Shift shift;
        shift.id = small_.id();
        shift.start = at(day, 360);
        shift.end = at(day, 1080);
        small_.season.shifts.add(shift);
        Station station;
        station.id = small_.id();
        station.shift = shift.id;
        station.easting_m = 700000;
        station.northing_m = 5500000;
        small_.season.stations.add(station);
        for (int turn = 0; turn < 2; ++turn)
            add_turn(day, turn, station.id);
    }

    void add_turn(int day, int turn, const Id& station) {
        const int start = 420 + 110 * turn;
        Load load;
        load.id = small_.id();
        load.barge = barges_[turn];
        load.stated_in_situ_m3 = 50;
        load.loading_start = at(day, start);
        load.loading_end = at(day, start + 100);
        small_.season.loads.add(load);
        Tally tally;
        tally.id = small_.id();
        tally.load = load.id;
        tally.station = station;
        small_.season.tallies.add(tally);
        Trip trip;
        trip.id = small_.id();
        trip.load = load.id;
        trip.tug = tug_;
        const int off = start + 105;
        trip.departed = at(day, off);
        trip.release_start = at(day, off + 90);
        trip.release_end = at(day, off + 120);
        trip.returned = at(day, off + 180);
        static const LonLat there = Crs::from_epsg(32760)->unproject({709000, 5512000});
        trip.lat = there.lat_deg;
        trip.lon = there.lon_deg;
        small_.season.trips.add(trip);
    }

    Id tug_, barges_[2];
    Instant as_at_;
    std::unique_ptr<Ledger> ledger_;
};

}  // namespace

TEST_CASE("loads an hour in the long run are the least of what dredger, tugs and barges allow", "[what-if]") {
    constexpr int hours = 2000;
    for (const int fill : {40, 100, 137})
        for (const int change : {5, 20})
            for (const int round_trip : {55, 172, 400})
                for (int barges = 1; barges <= 5; ++barges)
                    for (int tugs = 1; tugs <= 4; ++tugs) {
                        CAPTURE(fill, change, round_trip, barges, tugs);
                        const auto logged = works_of({1, 1, fill, change, round_trip});
                        WorksSupposed supposed;
                        supposed.barges = barges;
                        supposed.tugs = tugs;
                        const auto to_be = suppose(logged, supposed);
                        const double walked =
                            loads_filled({barges, tugs, fill, change, round_trip}, 60 * hours);
                        // At the start all barges are empty, at the end some are not filled yet.
                        CHECK_THAT(*to_be->pace.least() * hours, WithinAbs(walked, barges + 1));
                        const double before = loads_filled({1, 1, fill, change, round_trip}, 60 * hours);
                        CHECK_THAT(to_be->supposed.rate_factor, WithinAbs(walked / before, 0.02));
                    }
}

TEST_CASE("another barge brings nothing where one tug holds the loads up, another tug does", "[what-if]") {
    // Tugs allow 1/3 load an hour, barges 2·60/290 = 0.4138, the dredger 60/110 = 0.5455.
    const auto logged = works_of({2, 1, 100, 10, 180});
    CHECK(logged.pace.governs() == Governs::tugs);
    WorksSupposed barge;
    barge.barges = 3;
    CHECK(suppose(logged, barge)->supposed.rate_factor == 1);
    CHECK(suppose(logged, barge)->pace.governs() == Governs::tugs);
    WorksSupposed tug;
    tug.tugs = 2;
    CHECK_THAT(suppose(logged, tug)->supposed.rate_factor, WithinAbs(36.0 / 29, 1e-12));
    CHECK(suppose(logged, tug)->pace.governs() == Governs::barges);
    tug.barges = 3;  // the dredger: 60/110 against 60/180
    CHECK_THAT(suppose(logged, tug)->supposed.rate_factor, WithinAbs(18.0 / 11, 1e-12));
    CHECK(suppose(logged, tug)->pace.governs() == Governs::dredger);
}

TEST_CASE("nothing supposed is the forecast as logged", "[what-if]") {
    TwoBarges works(40, 4000 + 1200);
    ForecastAsked asked;
    const auto made = works.ask({});
    REQUIRE(made);
    asked.as_at = works.at(40, 0) - 1;
    asked.draws = 100;
    const Ledger ledger(works.small_.season);
    const auto logged = forecast(ledger, asked);
    WorksSupposed the_same;
    the_same.barges = 2;
    the_same.tugs = 1;
    the_same.hours_a_day = made->logged.pattern->hours_a_day;
    the_same.days_a_week = made->logged.pattern->days_a_week;
    the_same.haul_more_km = 0;
    const auto said_again = works.ask(the_same);
    CHECK(said_again->to_be.supposed == Supposed{});
    for (const Forecast* other : {&made->as_logged, &made->as_supposed, &said_again->as_supposed}) {
        CHECK(other->target.p50 == logged.target.p50);
        REQUIRE(other->fan.size() == logged.fan.size());
        const bool same = std::equal(logged.fan.begin(), logged.fan.end(), other->fan.begin(),
                                     [](const FanDay& a, const FanDay& b) {
                                         return a.p10 == b.p10 && a.p50 == b.p50 && a.p90 == b.p90;
                                     });
        CHECK(same);
    }
}

TEST_CASE("what the works are logged as is what they were", "[what-if]") {
    TwoBarges works(40, 4000 + 1200);
    const auto logged = works.ask({})->logged;
    CHECK(logged.why_no_pace().empty());
    CHECK_THAT(*logged.pace.by_tugs, WithinAbs(1.0 / 3, 1e-12));
    REQUIRE(logged.pattern);
    CHECK(logged.pattern->hours_a_day == 12);
    CHECK(logged.pattern->days_a_week == 7);
    CHECK(logged.pattern->days == 40);
    REQUIRE(logged.tow);
    CHECK(logged.tow->out_km_h.n == 80);
    // 15 km on a map whose scale is within 0.1 % there: 90 minutes out, 60 home.
    CHECK_THAT(logged.tow->out_km_h.median, WithinRel(10.0, 0.001));
    CHECK_THAT(logged.tow->home_km_h.median, WithinRel(15.0, 0.001));
    CHECK_THAT(logged.tow->minutes_a_km(), WithinRel(10.0, 0.001));
}

TEST_CASE("the target comes when the hand-worked pace has carried what is left", "[what-if]") {
    TwoBarges works(40, 4000 + 1195);  // 1195 m³ are left, 100 a day
    CHECK(works.days_to_target({}) == 12);
    WorksSupposed tug;
    tug.tugs = 2;  // 124.1 m³ a day: 1117 in nine days
    CHECK(works.days_to_target(tug) == 10);
    WorksSupposed slow;
    slow.round_trip_more_min = 60;  // 1/4 load an hour, not 1/3
    CHECK(works.days_to_target(slow) == 16);
    WorksSupposed far;
    far.haul_more_km = 6.001;  // ten minutes a km, but for the map's scale
    CHECK_THAT(works.ask(far)->to_be.round_trip_more_min, WithinAbs(60, 0.1));
    WorksSupposed longer;
    longer.hours_a_day = 18;
    CHECK(works.days_to_target(longer) == 8);
    longer.days_a_week = 3.5;
    CHECK(works.days_to_target(longer) == 16);
    WorksSupposed deeper;
    deeper.others.over_dredge_share = 0.2;  // 6494 are to be dredged: 2494 left
    CHECK(works.days_to_target(deeper) == 25);
    deeper.others.rate_factor = 1.25;  // comes on top
    deeper.tugs = 2;                   // 155.2 a day
    CHECK(works.days_to_target(deeper) == 17);
}

TEST_CASE("a shift past midnight is the day's on which it was opened, and hours count once", "[what-if]") {
    SeasonHours hours;
    const Zone zone = *Zone::named("Pacific/Auckland");
    const auto add = [&](int day, int from, int to) {
        const Instant start = zone.day_start(plus_days(first_day, day));
        ShiftHours shift;
        shift.time = {start + from * ms_per_hour, start + to * ms_per_hour};
        hours.shifts.push_back(shift);
    };
    add(-1, 6, 18);  // the day before: not asked for
    add(0, 6, 18);
    add(0, 18, 30);  // the night after it
    add(1, 6, 18);
    add(1, 8, 12);   // a second pontoon
    add(14, 6, 18);  // after the last day
    const auto pattern = shift_pattern(hours, zone, first_day, plus_days(first_day, 13));
    REQUIRE(pattern);
    CHECK(pattern->days == 2);
    CHECK(pattern->hours_a_day == 18);
    CHECK(pattern->days_a_week == 1);
    CHECK_FALSE(shift_pattern(hours, zone, plus_days(first_day, 3), plus_days(first_day, 9)));
}

TEST_CASE("what the log does not hold is told, not guessed", "[what-if]") {
    auto logged = works_of({2, 1, 100, 10, 180});
    WorksSupposed supposed;
    supposed.haul_more_km = 5;
    supposed.hours_a_day = 12;
    const auto refused = suppose(logged, supposed);
    REQUIRE_FALSE(refused);
    REQUIRE(refused.refusals().size() == 2);  // no way is logged, and no shift
    for (const auto& refusal : refused.refusals())
        CHECK(refusal.code == "not-in-log");
    logged.pace.round_trip.reset();
    logged.pace.by_dredger = logged.pace.by_tugs = logged.pace.by_barges = std::nullopt;
    CHECK(logged.why_no_pace() == "no round trip is logged");
    WorksSupposed barge;
    barge.barges = 3;
    CHECK(suppose(logged, barge).refusals().at(0).what.find("no round trip is logged") != std::string::npos);
    WorksSupposed rate;  // what needs no pace is answered
    rate.others.rate_factor = 2;
    CHECK(suppose(logged, rate)->supposed.rate_factor == 2);
}

TEST_CASE("works that cannot be are refused", "[what-if]") {
    auto logged = works_of({2, 1, 100, 10, 180});
    logged.pattern = ShiftPattern{12, 6, 78};
    const auto code_of = [&](const auto& change) {
        WorksSupposed supposed;
        change(supposed);
        const auto refused = suppose(logged, supposed);
        return refused ? std::string() : refused.refusals().at(0).code;
    };
    CHECK(code_of([](auto& s) { s.barges = 0; }) == "out-of-range");
    CHECK(code_of([](auto& s) { s.tugs = -1; }) == "out-of-range");
    CHECK(code_of([](auto& s) { s.round_trip_more_min = -180; }) == "out-of-range");
    CHECK(code_of([](auto& s) { s.round_trip_more_min = -179; }).empty());
    CHECK(code_of([](auto& s) { s.hours_a_day = 24.1; }) == "out-of-range");
    CHECK(code_of([](auto& s) { s.hours_a_day = std::nan(""); }) == "out-of-range");
    CHECK(code_of([](auto& s) { s.days_a_week = 0; }) == "out-of-range");
    CHECK(code_of([](auto& s) { s.hours_a_day = 24; }).empty());
    TwoBarges works(40, 9000);
    WorksSupposed past;
    past.others.season_closes = plus_days(first_day, 39);
    CHECK(works.ask(past).refusals().at(0).code == "out-of-range");
    past.others.season_closes = plus_days(first_day, 40);
    CHECK(works.ask(past));
}
