// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/forecast.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "model/progress/work_days.h"
#include "model/unit/calendar.h"
#include "tests/unit/consent/support.h"

using namespace spoilbook;
using Catch::Matchers::WithinAbs;

namespace {

/// A season dredged and released at noon of each day, Monday 4 August 2025 first: loads of stated, hence
/// exact, volume.
class Works {
 public:
    explicit Works(double planned_m3) {
        Claim claim;
        claim.id = small_.id();
        claim.claim = "FB1";
        claim.planned_in_situ_m3 = planned_m3;
        small_.season.claims.add(claim);
    }

    void day(int number, double in_situ_m3) {
        if (in_situ_m3 <= 0) return;
        const Zone& zone = small_.season.zone;
        const Instant noon = zone.day_start(plus_days({2025, 8, 4}, number)) + 12 * ms_per_hour;
        Load load;
        load.id = small_.id();
        load.stated_in_situ_m3 = in_situ_m3;
        load.loading_start = noon - ms_per_hour;
        load.loading_end = noon;
        small_.season.loads.add(load);
        Trip trip;
        trip.id = small_.id();
        trip.load = load.id;
        trip.release_end = noon;
        small_.season.trips.add(trip);
    }

    /// The evening before day `number`: all days before it are over.
    [[nodiscard]] Instant evening_before(int number) const {
        return small_.season.zone.day_start(plus_days({2025, 8, 4}, number)) - 1;
    }

    [[nodiscard]] Forecast ask(int as_at_day, Supposed supposed = {}, int draws = 200,
                               std::uint64_t seed = 1) {
        ForecastAsked asked;
        asked.as_at = evening_before(as_at_day);
        asked.supposed = supposed;
        asked.draws = draws;
        asked.seed = seed;
        ledger_ = std::make_unique<Ledger>(small_.season);
        return forecast(*ledger_, asked);
    }

    SmallSeason small_;

 private:
    std::unique_ptr<Ledger> ledger_;
};

/// Six days a week of 100 in-situ m³, none on Sundays.
double usual(int day) {
    return day % 7 == 6 ? 0 : 100;
}

Day date_of(int number) {
    return plus_days({2025, 8, 4}, number);
}

}  // namespace

TEST_CASE("where every week is like the last, the target's day is certain and Sundays stay free") {
    Works works(3200 + 1250);
    for (int i = 0; i < 37; ++i)
        works.day(i, usual(i));  // 5 weeks of 600 and two days: 3200
    const auto made = works.ask(37);
    CHECK_THAT(made.left_m3, WithinAbs(1250, 1e-6));
    // Wednesday to Saturday 400, a free Sunday, 600 to the next Saturday, a free Sunday, 250 by Wednesday.
    REQUIRE(made.target.p50);
    CHECK(*made.target.p50 == date_of(37 + 14));
    CHECK(made.target.p10 == made.target.p50);
    CHECK(made.target.p90 == made.target.p50);
    CHECK(made.first.size() == 1);
    CHECK(made.first[0].what == ComesFirst::What::target);
}

TEST_CASE("without four weeks of log or without a plan there is no forecast, and it says why") {
    Works young(1000);
    for (int i = 0; i < 20; ++i)
        young.day(i, 100);
    CHECK(young.ask(20).why_none == "fewer than four weeks of dredging are logged");
    Works unplanned(0);
    for (int i = 0; i < 40; ++i)
        unplanned.day(i, 100);
    CHECK(unplanned.ask(40).why_none == "no claim has a planned volume");
}

TEST_CASE("twice the hours take half the days, and over-dredging adds to what is to be carried") {
    Works works(4000 + 2800);
    for (int i = 0; i < 40; ++i)
        works.day(i, 100);
    CHECK(works.ask(40).target.p50 == date_of(40 + 27));
    Supposed twice;
    twice.hours_factor = 2;
    CHECK(works.ask(40, twice).target.p50 == date_of(40 + 13));
    Supposed deeper;
    deeper.over_dredge_share = 0.2;
    // 6800 m³ of bed ask for 8500 dredged: 4500 are left.
    CHECK_THAT(works.ask(40, deeper).left_m3, WithinAbs(4500, 1e-6));
    CHECK(works.ask(40, deeper).target.p50 == date_of(40 + 44));
}

TEST_CASE("the same seed gives the same forecast, another seed another one") {
    Works works(30000);
    for (int i = 0; i < 56; ++i)
        works.day(i, 60 + 17 * (i * i % 7) + (i / 7 % 3) * 25);
    const auto a = works.ask(56, {}, 200, 7);
    const auto b = works.ask(56, {}, 200, 7);
    const auto c = works.ask(56, {}, 200, 8);
    REQUIRE(a.fan.size() == b.fan.size());
    bool same = true;
    bool other = false;
    for (std::size_t i = 0; i < a.fan.size(); ++i) {
        same = same && a.fan[i].p50 == b.fan[i].p50 && a.fan[i].p10 == b.fan[i].p10;
        other = other || (i < c.fan.size() && a.fan[i].p10 != c.fan[i].p10);
    }
    CHECK(same);
    CHECK(other);
    CHECK(*a.target.p10 <= *a.target.p50);
    CHECK(*a.target.p50 <= *a.target.p90);
}

TEST_CASE("weeks are drawn evenly: the chance of a date is that of the binomial distribution") {
    // Eight weeks, four of 70 m³ and four of 210. A draw takes eight of them, m of the heavy, m binomial
    // (8, 1/2), and strings four of those together: 280 + 140 k, k binomial (4, m/8), at least 560 for k ≥ 2.
    double expected = 0;
    const std::vector<double> of_eight{1, 8, 28, 56, 70, 56, 28, 8, 1};
    for (int m = 0; m <= 8; ++m) {
        const double p = m / 8.0;
        const double less = std::pow(1 - p, 4) + 4 * p * std::pow(1 - p, 3);
        expected += of_eight[static_cast<std::size_t>(m)] / 256 * (1 - less);
    }
    Works works(8 * 140 + 560);
    for (int i = 0; i < 56; ++i)
        works.day(i, i / 7 % 2 == 0 ? 10 : 30);
    const auto made = works.ask(56, {}, 4000);
    double within = 0;
    for (const auto& day : made.fan) {
        if (day.date == date_of(56 + 27)) within = day.p50;
    }
    CHECK(within == 0);  // more than half of the draws are through by then
    // The share itself: a limit of the same height on a term that began with the days to come.
    works.small_.condition("L", R"({"measure":"in_situ_m3","op":"at_most","value":559.9,
        "window":{"kind":"phase","from":"2025-09-29","to":"2025-10-27"}})");
    const auto limited = works.ask(56, {}, 4000);
    REQUIRE(limited.limits.size() == 1);
    const double sigma = std::sqrt(expected * (1 - expected) / 4000);
    CHECK_THAT(limited.limits[0].dates.reached, WithinAbs(expected, 4 * sigma));
}

TEST_CASE("a day that the consent closes stands still, and the season's end is told") {
    Works works(4000 + 1000);
    for (int i = 0; i < 40; ++i)
        works.day(i, 100);
    works.small_.condition("7", R"({"mode":"forbid","dates":["09-15..09-19"]})");
    auto closes = works.small_.season.conditions.rows().back();
    closes.kind = "time";
    closes.id = works.small_.id();
    works.small_.season.conditions.add(closes);
    const auto made = works.ask(40);  // days to come begin on Saturday 13 September
    REQUIRE(made.season_closes);
    CHECK(*made.season_closes == Day{2025, 9, 15});
    CHECK(made.target.p50 == date_of(40 + 9 + 5));
    CHECK(made.p_season_before_target == 1);
}

TEST_CASE("a day's work is the volume that was full in it and its hours with a barge being filled") {
    Works works(1000);
    works.day(0, 100);
    works.day(2, 50);
    const Ledger ledger(works.small_.season);
    const auto days = work_days(ledger, works.evening_before(4) - ms_per_hour);
    REQUIRE(days.size() == 3);  // the day of the as-at is not over yet
    CHECK(days[0].in_situ_m3 == 100);
    CHECK(days[1].in_situ_m3 == 0);
    CHECK_THAT(days[2].filling_h, WithinAbs(1, 1e-9));
}
