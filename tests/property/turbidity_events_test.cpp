// SPDX-License-Identifier: GPL-3.0-or-later
// Ten thousand random triggers on random series with gaps, against a plain evaluator: exact times.
#include <rapidcheck.h>

#include <catch2/catch.hpp>
#include <random>

#include "model/turbidity/trigger.h"
#include "tests/property/turbidity_plain_evaluator.h"

using namespace spoilbook;
using namespace spoilbook::test;
using nlohmann::json;

namespace {

class AnyWatch {
 public:
    explicit AnyWatch(unsigned seed) : random_(seed) {}

    int below(int n) { return static_cast<int>(random_() % static_cast<unsigned>(n)); }
    bool one_in(int n) { return below(n) == 0; }

    /// Ten-minute readings about the end of daylight saving, some missing, late or flagged; the level
    /// wanders, so that runs over it last.
    SiteSeries series(int rows) {
        std::vector<LoggerReading> readings;
        Instant at = begin + below(10) * ms_per_minute;
        double level = below(20);
        for (int i = 0; i < rows; ++i) {
            at = at + (one_in(12) ? below(8) : 1) * 10 * ms_per_minute;
            level = std::clamp(level + below(7) - 3, 0.0, 30.0);
            readings.push_back({at, one_in(10) ? std::nullopt : std::optional(level)});
        }
        std::vector<FlagOverrule> bad;
        for (int i = 0; i < rows / 10; ++i) {
            const auto& one = readings[static_cast<std::size_t>(below(rows))];
            bad.push_back({one.time, one.time, one_in(2) ? Flag::suspect : Flag::fail});
        }
        return checked_series(readings, {}, bad, 10);
    }

    json band_level() {
        const int form = below(3);
        if (form == 0) return {{"absolute", below(25)}};
        if (form == 1) return {{"above_control", below(10) - 2}};
        return {{"times_control", below(30) / 10.0}};
    }
    json compare() {
        if (one_in(4)) return {{"higher_of", {band_level(), band_level()}}};
        if (!one_in(4)) return band_level();
        json low = band_level(), high = band_level();
        low["control_from"] = 0;
        low["control_to"] = 10;
        high["control_from"] = 10;
        high["control_to"] = 20;
        return {{"bands", {low, high}}};
    }

    json body() {
        const char* kinds[] = {"mean", "median", "instant"};
        json body = {{"variable", "turbidity"},
                     {"control", "C1"},
                     {"statistic", {{"kind", kinds[below(3)]}}},
                     {"over_minutes", 10 * (1 + below(9))},
                     {"min_complete", below(5) / 4.0},
                     {"compare", compare()},
                     {"clear", {{"sites", one_in(2) ? "all" : "same"}, {"held_hours", below(9) / 2.0}}}};
        const int passes = below(4);
        if (passes == 0) body["passes"] = {{"at_once", true}};
        if (passes == 1) body["passes"] = {{"held_hours", below(10) / 3.0}};
        if (passes == 2) body["passes"] = {{"hours_in", {{"hours", 1 + below(5)}, {"days", 1 + below(2)}}}};
        const int whilst = below(4);
        if (whilst == 0) body["while"] = "working";
        if (whilst == 1) body["while"] = {{"working_plus", {{"hours", below(5)}}}};
        return body;
    }

    std::vector<Period> working() {
        std::vector<Period> periods;
        for (int i = 0; i < 3; ++i) {
            const Instant from = begin + below(3000) * ms_per_minute;
            periods.push_back({from, from + below(900) * ms_per_minute});
        }
        return periods;
    }

    const Instant begin{1775286000000};  // 2026-04-04T20:00+13:00; clocks go back at 3:00 the next morning

 private:
    std::mt19937 random_;
};

SeriesVersion version_of(const PlainVersion& plain, const Zone& zone) {
    Condition condition;
    condition.body = plain.body.dump();
    return {*series_rule_from(condition, zone), Instant{plain.from}, Instant{plain.to}, nullptr};
}

void compare_one(unsigned seed) {
    const Zone zone = *Zone::named("Pacific/Auckland");
    AnyWatch any(seed);
    std::map<std::string, SiteSeries> sites;
    for (const char* site : {"R1", "R2", "C1"})
        sites[site] = any.series(40 + any.below(80));
    const std::int64_t change = any.begin.utc_ms + any.below(2000) * ms_per_minute;
    const std::int64_t far = std::int64_t{1} << 50;
    std::vector<PlainVersion> plain{{any.body(), 0, change}, {any.body(), change, far}};
    if (any.one_in(5)) plain[1].from += 60 * ms_per_minute;  // an hour that no version holds in
    const auto working = any.working();

    Trigger trigger;
    trigger.sites = {"R1", "R2"};
    for (const auto& version : plain)
        trigger.versions.push_back(version_of(version, zone));
    const auto series_of = [&](const std::string& site) { return &sites.at(site); };
    const auto found = find_events(trigger, series_of, WorkingTime(working), zone);

    const auto expected = PlainEvaluator(plain, sites, working, zone).events(trigger.sites);
    RC_ASSERT(found.events.size() == expected.size());
    for (std::size_t i = 0; i < expected.size(); ++i) {
        const auto& event = found.events[i];
        RC_ASSERT(event.site == expected[i].site);
        RC_ASSERT(event.over_since.utc_ms == expected[i].over_since);
        RC_ASSERT(event.start.utc_ms == expected[i].start);
        RC_ASSERT((event.end ? event.end->utc_ms : -1) == expected[i].end);
        RC_ASSERT(std::fabs(event.peak - expected[i].peak) < 1e-9);
    }
}

}  // namespace

TEST_CASE("the events of any trigger begin and end at the very readings of a plain evaluator") {
    rc::check([] {
        const auto seed = static_cast<unsigned>(*rc::gen::inRange(0, 1 << 30));
        for (unsigned i = 0; i < 100; ++i)
            compare_one(seed + i);
    });
}
