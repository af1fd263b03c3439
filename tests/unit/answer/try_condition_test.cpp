// SPDX-License-Identifier: GPL-3.0-or-later
// What a trial says is counted again here, release by release, in the plainest way.
#include "model/answer/try_condition.h"

#include <catch2/catch.hpp>
#include <map>

#include "tests/unit/consent/support.h"

using namespace spoilbook;

namespace {

struct Put {
    Instant at;
    double m3 = 0;
};

/// 300 releases at odd hours over some 100 days of 2025, of 50 to 449 m³.
std::vector<Put> season_of(SmallSeason& here) {
    std::vector<Put> put;
    std::uint32_t dice = 7;
    const auto throw_dice = [&dice](std::uint32_t sides) {
        dice = dice * 1664525u + 1013904223u;
        return (dice >> 8) % sides;
    };
    Instant at = here.at("2025-02-01T05:00+13:00");
    for (int i = 0; i < 300; ++i) {
        at = at + (1 + throw_dice(15)) * ms_per_hour;
        put.push_back({at, 50.0 + throw_dice(400)});
        here.released_at(at, put.back().m3, Id{});
    }
    return put;
}

Condition candidate(const SmallSeason& here, const char* kind, const char* body) {
    Condition condition;
    condition.consent = here.consent;
    condition.condition = "99";
    condition.kind = kind;
    condition.body = body;
    // A version to come: what has passed is judged all the same.
    condition.from = here.at("2027-01-01T00:00+13:00");
    return condition;
}

}  // namespace

TEST_CASE("a rolling limit is passed as often as adding up by hand says", "[trial]") {
    SmallSeason here;
    const auto put = season_of(here);
    const Ledger ledger(here.season);
    const Instant from = put[40].at;
    const Instant to = put[280].at;
    std::vector<Instant> over;
    int times = 0;
    bool before = false;
    std::size_t looked_at = 0;
    for (const auto& end : put) {
        if (end.at < from || to < end.at) continue;
        ++looked_at;
        // No clocks change between 5 and 72 h before in UTC's days; the zone's own days are 24 h but for one.
        double sum = 0;
        for (const auto& one : put)
            sum += one.at > end.at - 48 * ms_per_hour && one.at <= end.at ? one.m3 : 0;
        if (sum > 1900) over.push_back(end.at);
        times += sum > 1900 && !before ? 1 : 0;
        before = sum > 1900;
    }
    REQUIRE(over.size() > 5);
    REQUIRE(over.size() < looked_at - 5);
    here.season.zone = Zone::utc();
    const Ledger plain(here.season);
    const auto trial =
        try_condition(plain, candidate(here, "quantity", R"({"measure":"in_situ_m3","value":1900,
        "window":{"kind":"rolling","n":2,"unit":"days"}})"),
                      from, to);
    CHECK(trial.why_not.empty());
    CHECK(trial.looked_at == looked_at);
    CHECK(trial.times == static_cast<std::size_t>(times));
    CHECK(trial.first() == over.front());
    std::vector<Instant> said;
    for (const auto& pass : trial.passes)
        said.push_back(pass.at);
    CHECK(said == over);
    CHECK(trial.passes.front().what.rfind("T-", 0) == 0);
}

TEST_CASE("trips a day and a month's floor are counted on the local calendar", "[trial]") {
    SmallSeason here;
    const auto put = season_of(here);
    const Ledger ledger(here.season);
    std::map<std::string, int> by_day;
    std::map<std::string, double> by_month;
    std::size_t over = 0;
    for (const auto& one : put) {
        const std::string local = instant_text(one.at, here.season.zone);
        over += ++by_day[local.substr(0, 10)] > 3 ? 1 : 0;
        by_month[local.substr(0, 7)] += one.m3;
    }
    REQUIRE(over > 0);
    const auto trips = try_condition(ledger, candidate(here, "quantity", R"({"measure":"trips","value":3,
        "window":{"kind":"calendar","unit":"day"}})"),
                                     put.front().at, put.back().at);
    CHECK(trips.passes.size() == over);

    // Months that ended by the last release; a little more than the least of them held is not reached there.
    by_month.erase(std::prev(by_month.end()));
    double least = 1e9;
    for (const auto& month : by_month)
        least = std::min(least, month.second);
    const std::string body =
        R"({"measure":"in_situ_m3","op":"at_least","window":{"kind":"calendar","unit":"month"},"value":)";
    const auto floor =
        try_condition(ledger, candidate(here, "quantity", (body + std::to_string(least + 1) + "}").c_str()),
                      put.front().at, put.back().at);
    CHECK(floor.looked_at == by_month.size());
    CHECK(floor.times == 1);
    const auto open =
        try_condition(ledger, candidate(here, "quantity", R"({"measure":"trips","op":"at_least","value":1,
        "window":{"kind":"rolling","n":2,"unit":"days"}})"),
                      put.front().at, put.back().at);
    // A window of two days ends at every instant: the one that ends with the last release holds it.
    CHECK(open.looked_at == 1);
    CHECK(open.passes.empty());
}

TEST_CASE("releases at night and above a wave height are named one by one", "[trial]") {
    SmallSeason here;
    const auto put = season_of(here);
    std::size_t night = 0;
    for (const auto& one : put) {
        const std::string hour = instant_text(one.at, here.season.zone).substr(11, 2);
        night += hour >= "20" || hour < "06" ? 1 : 0;
    }
    const Ledger ledger(here.season);
    const auto trial = try_condition(ledger, candidate(here, "time", R"({"applies":{"activity":"release"},
        "mode":"forbid","hours":["20:00..06:00"]})"),
                                     put.front().at, put.back().at);
    CHECK(trial.looked_at == put.size());
    CHECK(trial.times == night);
    const auto sea = try_condition(ledger, candidate(here, "series", R"({"variable":"wave_height_m",
        "compare":{"absolute":1.8}})"),
                                   put.front().at, put.back().at);
    CHECK(sea.looked_at == put.size());
    // Nobody recorded the sea: that is not the same as calm.
    CHECK(sea.cannot_tell == put.size());
    CHECK(sea.times == 0);
}

TEST_CASE("a load that no method can value is told beside the count", "[trial]") {
    SmallSeason here;
    here.released("2025-03-01T10:00+13:00", 700);
    here.released("2025-03-02T10:00+13:00", std::nullopt);
    here.released("2025-03-03T10:00+13:00", 700);
    const Ledger ledger(here.season);
    const auto trial =
        try_condition(ledger, candidate(here, "quantity", R"({"measure":"in_situ_m3","value":1000,
        "window":{"kind":"term"}})"),
                      here.at("2025-03-01T00:00+13:00"), here.at("2025-03-31T00:00+13:00"));
    CHECK(trial.looked_at == 3);
    CHECK(trial.cannot_tell == 1);
    CHECK(trial.times == 1);
    CHECK(trial.first() == here.at("2025-03-03T10:00+13:00"));
}

TEST_CASE("a survey is due as often as the steps that the releases came over", "[trial]") {
    SmallSeason here;
    const auto put = season_of(here);
    const Ledger ledger(here.season);
    double sum = 0;
    std::vector<Instant> steps;
    for (const auto& one : put) {
        const int before = static_cast<int>(sum / 5000);
        sum += one.m3;
        for (int step = before; step < static_cast<int>(sum / 5000); ++step)
            steps.push_back(one.at);
    }
    REQUIRE(steps.size() > 8);
    const auto survey = candidate(here, "duty", R"({"what":"survey","when":{"every":{"measure":"in_situ_m3",
        "value":5000}},"due":{"n":2,"unit":"hours"}})");
    const auto trial = try_condition(ledger, survey, put.front().at, put.back().at + ms_per_day);
    CHECK(trial.looked_at == steps.size());
    // Nobody recorded one.
    CHECK(trial.times == steps.size());
    CHECK(trial.first() == steps.front() + 2 * ms_per_hour);
    // Asked up to the third step: what came after it had not arisen.
    CHECK(try_condition(ledger, survey, put.front().at, steps[2]).looked_at == 3);
}

TEST_CASE("what cannot be tried says so, and never that it was kept", "[trial]") {
    SmallSeason here;
    const Ledger ledger(here.season);
    const Instant t = here.at("2025-03-01T00:00+13:00");
    for (const char* kind : {"surface", "watch", "record", "text"})
        CHECK_FALSE(try_condition(ledger, candidate(here, kind, "{}"), t, t).why_not.empty());
    CHECK_FALSE(try_condition(ledger,
                              candidate(here, "quantity", R"({"measure":"trips","window":{"kind":"trip"}})"),
                              t, t)
                    .why_not.empty());
    CHECK_FALSE(
        try_condition(ledger,
                      candidate(here, "series", R"({"variable":"turbidity","compare":{"absolute":5}})"), t, t)
            .why_not.empty());
}
