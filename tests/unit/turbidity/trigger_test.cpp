// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/trigger.h"

#include <catch2/catch.hpp>
#include <map>

#include "model/turbidity/site_statistic.h"
#include "model/unit/time_text.h"

using namespace spoilbook;

namespace {

const Zone utc = Zone::utc();

Instant at(const std::string& clock) {
    return *parse_instant("2026-02-01T" + clock, utc);
}

/// Hourly readings from midnight; a negative one is missing.
SiteSeries hourly(const std::vector<double>& values) {
    std::vector<LoggerReading> readings;
    for (const double value : values) {
        const Instant time = at("00:00") + static_cast<std::int64_t>(readings.size()) * ms_per_hour;
        readings.push_back({time, value < 0 ? std::nullopt : std::optional(value)});
    }
    return checked_series(readings, {}, {}, 60);
}

struct Watched {
    std::map<std::string, SiteSeries> sites;
    std::vector<Period> working;

    TriggerOutcome under(const std::string& body, std::vector<std::string> names = {"R1"}) const {
        Condition condition;
        condition.body = body;
        Trigger trigger{{{*series_rule_from(condition, utc), std::nullopt, std::nullopt, nullptr}},
                        std::move(names)};
        const auto series_of = [&](const std::string& site) {
            const auto found = sites.find(site);
            return found == sites.end() ? nullptr : &found->second;
        };
        return find_events(trigger, series_of, WorkingTime(working), utc);
    }
};

std::string with(const std::string& members) {
    return R"({"variable": "turbidity", "sites": ["R1"], "control": "C1", )" + members + "}";
}

}  // namespace

TEST_CASE("a level held for two hours opens an event, and its all-clear closes it") {
    Watched watch;
    watch.sites["R1"] = hourly({1, 12, 12, 15, 1, 1, 12, 1, 1, 1, 1});
    const auto found = watch.under(with(
        R"("compare": {"absolute": 10}, "passes": {"held_hours": 2}, "clear": {"sites": "same", "held_hours": 3})"));
    REQUIRE(found.events.size() == 1);
    const auto& event = found.events[0];
    CHECK(event.over_since == at("01:00"));
    CHECK(event.start == at("03:00"));
    CHECK(event.end == at("10:00"));  // the reading over at 6:00 began the all-clear anew
    CHECK(event.peak == 15);
    CHECK(event.peak_at == at("03:00"));
}

TEST_CASE("a level met exactly is not over") {
    Watched watch;
    watch.sites["R1"] = hourly({10, 10, 10});
    CHECK(watch.under(with(R"("compare": {"absolute": 10})")).events.empty());
}

TEST_CASE("a level that binary digits miss by a hair is not over") {
    Watched watch;  // found by the oracle: 2.1 + 9.95 is 12.05, and in binary digits a hair less
    watch.sites["R1"] = hourly({12.05, 12.05});
    watch.sites["C1"] = hourly({2.1, 2.1});
    CHECK(watch.under(with(R"("compare": {"above_control": 9.95})")).events.empty());
    CHECK(watch.under(with(R"("compare": {"above_control": 9.949})")).events.size() == 1);
}

TEST_CASE("a peak does not vanish with the control's logger") {
    Watched watch;  // found by the oracle: of 25 it cannot be told whether it is over, but it was read
    watch.sites["R1"] = hourly({8, 18, 25, 8});
    watch.sites["C1"] = hourly({6, 6, -1, 6});
    const auto found = watch.under(with(R"("compare": {"above_control": 5})"));
    REQUIRE(found.events.size() == 1);
    CHECK(found.events[0].start == at("01:00"));
    CHECK(found.events[0].peak == 25);
    CHECK(found.events[0].peak_at == at("02:00"));
    CHECK(found.events[0].end == at("03:00"));
}

TEST_CASE("what cannot be told ends a hold, and neither breaks nor meets an all-clear") {
    Watched watch;
    watch.sites["R1"] = hourly({12, 12, 12, 12, 12, 1, 1, 1, 1});
    watch.sites["C1"] = hourly({1, -1, 1, 1, 1, 1, -1, 1, 1});
    const auto found = watch.under(with(
        R"("compare": {"above_control": 5}, "passes": {"held_hours": 2}, "clear": {"held_hours": 1},
           "over_minutes": 60, "min_complete": 1)"));
    REQUIRE(found.events.size() == 1);
    CHECK(found.events[0].over_since == at("02:00"));
    CHECK(found.events[0].start == at("04:00"));
    CHECK(found.events[0].end == at("07:00"));  // 6:00 would have been an hour of clear, but cannot be told
}

TEST_CASE("an event is not closed by a logger that falls silent") {
    Watched watch;
    watch.sites["R1"] = hourly({12, 12, -1, -1, -1});
    const auto found = watch.under(with(R"("compare": {"absolute": 10}, "clear": {"held_hours": 0})"));
    REQUIRE(found.events.size() == 1);
    CHECK_FALSE(found.events[0].end);
    CHECK(found.sites[0].open == 0U);
}

TEST_CASE("a control as high as the site explains it") {
    Watched watch;
    watch.sites["R1"] = hourly({30, 30, 30});
    watch.sites["C1"] = hourly({28, 26, 24});
    const auto found = watch.under(with(R"("compare": {"above_control": 5})"));
    REQUIRE(found.events.size() == 1);
    CHECK(found.events[0].start == at("02:00"));
}

TEST_CASE("an all-clear of all sites waits for the other site") {
    Watched watch;
    watch.sites["R1"] = hourly({12, 1, 1, 1, 1, 1});
    watch.sites["R2"] = hourly({1, 1, 12, 1, 1, 1});
    const auto body =
        R"({"variable": "turbidity", "compare": {"absolute": 10}, "clear": {"sites": "all", "held_hours": 2}})";
    const auto found = watch.under(body, {"R1", "R2"});
    REQUIRE(found.events.size() == 2);
    CHECK(found.events[0].site == "R1");
    CHECK(found.events[0].end == at("05:00"));
    CHECK(found.events[1].site == "R2");
    CHECK(found.events[1].end == at("05:00"));
}

TEST_CASE("hours over add up within a span of days") {
    Watched watch;
    watch.sites["R1"] = hourly({12, 1, 12, 1, 12, 12});
    const auto found =
        watch.under(with(R"("compare": {"absolute": 10}, "passes": {"hours_in": {"hours": 3, "days": 1}})"));
    REQUIRE(found.events.size() == 1);
    CHECK(found.events[0].over_since == at("00:00"));
    CHECK(found.events[0].start == at("04:00"));
}

TEST_CASE("a trigger that watches the work alone does not pass while nobody works") {
    Watched watch;
    watch.sites["R1"] = hourly({12, 12, 12, 12, 12, 12});
    watch.working = {{at("02:00"), at("03:30")}};
    const auto passes = R"("compare": {"absolute": 10}, "passes": {"held_hours": 1}, "while": )";
    CHECK(watch.under(with(std::string(passes) + R"("working")")).events[0].start == at("03:00"));
    const auto later = watch.under(with(
        R"("compare": {"absolute": 10}, "passes": {"held_hours": 3}, "while": {"working_plus": {"hours": 2}})"));
    REQUIRE(later.events.size() == 1);
    CHECK(later.events[0].start == at("05:00"));
    watch.working.clear();
    CHECK(watch.under(with(std::string(passes) + R"("working")")).events.empty());
}

TEST_CASE("a level can be a multiple of the site's own baseline") {
    Watched watch;
    watch.sites["R1"] = hourly({1, 2, 3, 4, 5, 8, 9});
    const auto found = watch.under(with(
        R"("compare": {"baseline": {"percentile": 50, "from": "2026-02-01T00:00Z", "to": "2026-02-01T05:00Z", "times": 2, "plus": 2}})"));
    REQUIRE(found.events.size() == 1);  // the median of 1 to 5 is 3: over 8
    CHECK(found.events[0].start == at("06:00"));
}

TEST_CASE("a baseline without readings tells nothing") {
    Watched watch;
    watch.sites["R1"] = hourly({100});
    const auto found =
        watch.under(with(R"("compare": {"baseline": {"percentile": 50, "to": "2020-01-01T00:00Z"}})"));
    CHECK(found.events.empty());
    CHECK(found.sites[0].last.telling == Telling::cannot_tell);
}

TEST_CASE("pairs compare a site with the water that passed the control earlier") {
    Watched watch;
    watch.sites["R1"] = hourly({20, 20, 30, 20});
    watch.sites["C1"] = hourly({5, 18, 10, 18});
    const auto found = watch.under(
        with(R"("compare": {"paired_above_control": {"x": 10, "lag_min": 60, "tolerance_min": 5}})"));
    REQUIRE(found.events.size() == 1);  // 20 − 5, 30 − 18, then 20 − 10, which is not over
    CHECK(found.events[0].start == at("01:00"));
    CHECK(found.events[0].peak == 15);
    CHECK(found.events[0].end == at("03:00"));
}

TEST_CASE("a level of which a member does not read is refused") {
    Condition condition;
    condition.condition = "20.1";
    condition.body = R"({"compare": {"baseline": {"times": 2}}})";
    CHECK(series_rule_from(condition, utc).refusals().front().code == "condition-does-not-read");
}

TEST_CASE("the statistic beside a reading is that of the differences where pairs are compared") {
    const std::map<std::string, SiteSeries> sites{{"R1", hourly({8, 18})}, {"C1", hourly({6, 6})}};
    Condition condition;  // found by the oracle: 18 was shown beside a peak of 12
    condition.body =
        with(R"("compare": {"paired_above_control": {"x": 10, "lag_min": 0, "tolerance_min": 5}})");
    const Trigger trigger{{{*series_rule_from(condition, utc), std::nullopt, std::nullopt, nullptr}}, {"R1"}};
    SiteStatistic statistic(trigger, "R1", [&](const std::string& site) { return &sites.at(site); });
    CHECK(statistic.at(at("00:00")) == 2);
    CHECK(statistic.at(at("01:00")) == 12);
}
