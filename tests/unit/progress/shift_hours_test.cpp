// SPDX-License-Identifier: GPL-3.0-or-later
// Where a shift's hours went, held against a count minute by minute.
#include "model/progress/shift_hours.h"

#include <catch2/catch.hpp>
#include <map>

#include "model/progress/delays.h"
#include "model/progress/positioning.h"
#include "tests/unit/progress/a_shift.h"

using namespace spoilbook;
using namespace spoilbook::tests;
using Catch::Matchers::WithinAbs;

namespace {

constexpr double to_a_second = 1.0 / 7200;

/// Numbers that look like a log: the same on every machine.
class Dice {
 public:
    explicit Dice(unsigned seed) : state_(seed) {}
    int below(int count) {
        state_ = state_ * 1103515245U + 12345U;
        return static_cast<int>((state_ >> 16U) % static_cast<unsigned>(count));
    }

 private:
    unsigned state_;
};

const std::vector<std::string> causes{"weather", "shifting station", "barge change"};

/// Two shifts of twelve hours, one after the other, with whatever the dice put into them.
Season a_log(unsigned seed) {
    Dice dice(seed);
    Season season;
    season.shifts.add(a_shift(1, 0, 720));
    season.shifts.add(a_shift(2, 720, 1440));
    for (unsigned char n = 0; n < 12; ++n) {
        const int down = dice.below(1440);
        auto station = a_station(static_cast<unsigned char>(20 + n), 0, 0, 0, down);
        if (n > 0) station.spuds_up = shift_minute(down + dice.below(300));
        station.shift = id_of(down < 720 ? 1 : 2);
        season.stations.add(station);
        const int from = dice.below(1440) - 60;
        season.loads.add(a_load(static_cast<unsigned char>(40 + n), from, from + dice.below(200)));
        const int start = dice.below(1500) - 30;
        auto delay = a_delay(static_cast<unsigned char>(60 + n), start, start + dice.below(90));
        if (n == 5) delay.end.reset();
        delay.cause = causes[static_cast<std::size_t>(dice.below(3))];
        delay.shift = id_of(start < 720 ? 1 : 2);
        season.delays.add(delay);
    }
    return season;
}

bool lies_in(std::int64_t minute, const std::optional<Instant>& from, const std::optional<Instant>& to,
             Instant open_end) {
    const Instant at = shift_minute(minute);
    return from && *from <= at && at < to.value_or(open_end);
}

/// What one minute of a shift was: "digging", "", or the cause of the delay that began first.
std::string minute_was(const Season& season, const Shift& shift, std::int64_t minute, Instant as_at) {
    const Instant shift_end = std::min(*shift.end, as_at);
    const Delay* first = nullptr;
    for (const auto& delay : season.delays.rows()) {
        const bool on = delay.shift == shift.id && lies_in(minute, delay.start, delay.end, shift_end);
        if (on && (first == nullptr || *delay.start < *first->start)) first = &delay;
    }
    if (first != nullptr) return first->cause;
    bool standing = false;
    bool filling = false;
    for (const auto& station : season.stations.rows())
        standing = standing || lies_in(minute, station.spuds_down, station.spuds_up, as_at);
    for (const auto& load : season.loads.rows())
        filling = filling || lies_in(minute, load.loading_start, load.loading_end, as_at);
    return standing && filling ? "digging" : "";
}

}  // namespace

TEST_CASE("every minute of a shift is digging, one delay, or not accounted for", "[shift_hours]") {
    const Instant as_at = shift_minute(1300);
    for (unsigned seed = 1; seed <= 200; ++seed) {
        CAPTURE(seed);
        const Season season = a_log(seed);
        const auto hours_of = season_hours(season, as_at);
        REQUIRE(hours_of.shifts.size() == 2);
        for (const auto& shift : hours_of.shifts) {
            std::map<std::string, double> counted;
            const std::int64_t first = shift.shift->id == id_of(1) ? 0 : 720;
            const std::int64_t last = std::min<std::int64_t>(first + 720, 1300);
            for (std::int64_t minute = first; minute < last; ++minute)
                counted[minute_was(season, *shift.shift, minute, as_at)] += 1.0 / 60;
            std::map<std::string, double> found;
            for (const auto& span : shift.delays)
                found[span.delay->cause] += hours({span.time});
            CHECK_THAT(shift.digging_h(), WithinAbs(counted["digging"], to_a_second));
            CHECK_THAT(shift.not_accounted_h(), WithinAbs(counted[""], to_a_second));
            for (const auto& cause : causes)
                CHECK_THAT(found[cause], WithinAbs(counted[cause], to_a_second));
        }
    }
}

TEST_CASE("digging, causes and what is not accounted for close to the shift hours", "[delays]") {
    const Season season = a_log(3);
    const auto all = season_hours(season, shift_minute(2000));
    // Local midnight lies at minute 1100: 24 hours less 05:40.
    const Zone zone = *Zone::named("Pacific/Auckland");
    for (const auto over : {HoursOver::all, HoursOver::month, HoursOver::week, HoursOver::shift}) {
        double shift_h = 0;
        for (const auto& row : hours_over(all, zone, over)) {
            CHECK_THAT(row.digging_h + row.delay_h() + row.not_accounted_h,
                       WithinAbs(row.shift_h, to_a_second));
            shift_h += row.shift_h;
        }
        CHECK_THAT(shift_h, WithinAbs(24, to_a_second));
    }
}

TEST_CASE("a shift over the end of a month gives each month its own hours", "[delays]") {
    const Zone zone = *Zone::named("Pacific/Auckland");
    // 05:40 on 4 November, moved to 18:00 on 31 October: six hours in October, six in November.
    const std::int64_t moved = -(3 * 1440 + 11 * 60 + 40);
    Season season;
    season.shifts.add(a_shift(1, moved, moved + 720));
    season.delays.add(a_delay(2, moved + 300, moved + 420));
    const auto rows = hours_over(season_hours(season, shift_minute(0)), zone, HoursOver::month);
    REQUIRE(rows.size() == 2);
    CHECK(rows[0].key == "2025-10");
    CHECK(rows[1].key == "2025-11");
    for (const auto& row : rows) {
        CHECK_THAT(row.shift_h, WithinAbs(6, to_a_second));
        CHECK_THAT(row.delay_h(), WithinAbs(1, to_a_second));
        REQUIRE(row.causes.size() == 1);
        CHECK_THAT(row.share(row.causes[0].hours), WithinAbs(1.0 / 6, 1e-6));
    }
}

TEST_CASE("a delay of no shift is left out and told", "[delays]") {
    Season season;
    season.shifts.add(a_shift(1, 0, 720));
    auto lost = a_delay(2, 10, 20);
    lost.shift = Id{};
    season.delays.add(lost);
    const auto all = season_hours(season, shift_minute(900));
    CHECK(all.delays_left_out == 1);
    CHECK(all.shifts.front().delays.empty());
}

TEST_CASE("a load that was never closed does not dig for ever", "[shift_hours]") {
    Season season;
    season.shifts.add(a_shift(1, 0, 720));
    season.shifts.add(a_shift(2, 2880, 3600));
    season.stations.add(a_station(3, 0, 0, 0, 0));
    season.loads.add(a_load(4, 0, std::nullopt));
    const auto all = season_hours(season, shift_minute(5000));
    CHECK_THAT(all.shifts[0].digging_h(), WithinAbs(12, to_a_second));
    CHECK_THAT(all.shifts[1].digging_h(), WithinAbs(0, to_a_second));
}

TEST_CASE("a step counts without the weather that came between, and not over a change of shift",
          "[positioning]") {
    Season season;
    season.shifts.add(a_shift(1, 0, 720));
    season.shifts.add(a_shift(2, 720, 1440));
    const auto stand = [&](unsigned char n, std::int64_t down, std::int64_t up) {
        auto station = a_station(n, 0, 0, 0, down);
        station.spuds_up = shift_minute(up);
        season.stations.add(station);
    };
    stand(10, 0, 100);
    stand(11, 112, 300);  // 12 minutes, all logged as shifting station
    stand(12, 360, 700);  // 60 minutes, 45 of them weather
    stand(13, 730, 800);  // over the change of shift
    stand(14, 790, 900);  // down before the last came up: a slip of the pen
    auto shifting = a_delay(30, 100, 112);
    shifting.cause = "shifting station";
    season.delays.add(shifting);
    auto weather = a_delay(31, 310, 355);
    weather.cause = "weather";
    season.delays.add(weather);
    const auto steps = positionings(season, season_hours(season, shift_minute(2000)));
    REQUIRE(steps.size() == 2);
    CHECK(steps[0].to->station == "ST-11");
    CHECK_THAT(steps[0].minutes, WithinAbs(12, 1e-9));
    CHECK_THAT(steps[1].minutes, WithinAbs(15, 1e-9));
    CHECK_THAT(steps[1].delayed_minutes, WithinAbs(45, 1e-9));
    CHECK_THAT(spread_of(steps)->median, WithinAbs(13.5, 1e-9));
    CHECK(!spread_of(std::vector<Positioning>{}));
}

TEST_CASE("the bed is dug while a shift fills a barge, not all night beside one half full", "[shift_hours]") {
    Season season;
    season.stations.add(a_station(20, 0, 0, 0, 0));
    season.loads.add(a_load(40, 60, 180));
    season.loads.add(a_load(41, 700, 1500));
    const auto minutes = [](int from, int to) { return Period{shift_minute(from), shift_minute(to)}; };
    // Nobody wrote shifts down: what the loads say.
    CHECK(digging_periods(season, shift_minute(1600)) == Periods{minutes(60, 180), minutes(700, 1500)});
    season.shifts.add(a_shift(1, 0, 720));
    auto delay = a_delay(60, 90, 120);
    delay.shift = id_of(1);
    season.delays.add(delay);
    CHECK(digging_periods(season, shift_minute(1600)) ==
          Periods{minutes(60, 90), minutes(120, 180), minutes(700, 720)});
    CHECK(digging_periods(season, shift_minute(150)) == Periods{minutes(60, 90), minutes(120, 150)});
}
