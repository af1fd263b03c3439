// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/surface_rule.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

namespace spoilbook::test {
namespace {

using Catch::Matchers::WithinAbs;
using nlohmann::json;

SurfaceRule rule(const char* members) {
    return surface_rule_from(json::parse(members)).value();
}

Claim claim(std::optional<double> target_level_m) {
    Claim made;
    made.claim = "FB2";
    made.target_level_m = target_level_m;
    return made;
}

Survey survey(const char* name, const char* kind) {
    Survey made;
    made.survey = name;
    made.kind = kind;
    return made;
}

/// 1 000 m², of which so many are past it, in doubt and surveyed.
SurfaceLook look(double past_m2, double in_doubt_m2 = 0, double covered_m2 = 1'000) {
    SurfaceLook made;
    made.area_m2 = 1'000;
    made.surveyed_m2 = made.covered_m2 = covered_m2;
    made.past_m2 = past_m2;
    made.in_doubt_m2 = in_doubt_m2;
    return made;
}

}  // namespace

TEST_CASE("an allowance widens every bound, and a depth is a level turned round", "[surface]") {
    const auto bounds = bounds_of(
        rule(R"({"no_deeper_than_m":-9.6,"least_depth_m":9,"no_rise_over_baseline_m":1,"allowance_m":0.3})"),
        nullptr, survey("SV-1", "progress"));
    CHECK_THAT(*bounds.lowest_m, WithinAbs(-9.9, 1e-12));
    CHECK_THAT(*bounds.highest_m, WithinAbs(-8.7, 1e-12));
    CHECK_THAT(*bounds.most_rise_m, WithinAbs(1.3, 1e-12));
}

TEST_CASE("an allowance alone is that of a claim's target level", "[surface]") {
    const auto by_target = rule(R"({"claim":"FB2","allowance_m":0.3})");
    const Claim dug = claim(-9.6), blank = claim({});
    const Survey after = survey("SV-3", "after");
    CHECK_THAT(*bounds_of(by_target, &dug, after).lowest_m, WithinAbs(-9.9, 1e-12));
    CHECK_FALSE(bounds_of(by_target, &dug, after).highest_m);
    CHECK(bounds_of(by_target, &blank, after).empty());
    CHECK(bounds_of(by_target, nullptr, after).empty());
}

TEST_CASE("a condition that says no level and no allowance cannot be held against a bed", "[surface]") {
    CHECK_FALSE(surface_rule_from(json::parse(R"({"claim":"FB2","tolerance_share":0.1})")));
    CHECK_FALSE(surface_rule_from(json::parse(R"({"no_deeper_than_m":"deep"})")));
    CHECK_FALSE(surface_rule_from(json::parse("[]")));
}

TEST_CASE("where it holds is what it names, else what it applies to", "[surface]") {
    const auto named =
        rule(R"({"claim":"FB2","allowance_m":0,"applies":{"claims":["FB1"],"grounds":["Bank"]}})");
    CHECK(named.claims == std::vector<std::string>{"FB2"});
    CHECK(named.grounds.empty());
    const auto scoped = rule(R"({"least_depth_m":9,"applies":{"claims":["FB1"],"cells":["C4"]}})");
    CHECK(scoped.claims == std::vector<std::string>{"FB1"});
    CHECK(scoped.cells == std::vector<std::string>{"C4"});
}

TEST_CASE("a survey before the works tells nothing of them", "[surface]") {
    const auto deep = rule(R"({"claim":"FB2","no_deeper_than_m":-9.9})");
    CHECK_FALSE(judges(deep, survey("SV-1", "before")));
    CHECK(judges(deep, survey("SV-2", "progress")));
    CHECK(judges(deep, survey("SV-3", "after")));
    CHECK(judges(deep, survey("SV-4", "")));
}

TEST_CASE("the survey that a condition names judges, and no other; a named baseline never does",
          "[surface]") {
    const auto named = rule(R"({"claim":"FB2","no_deeper_than_m":-9.9,"survey":"SV-1"})");
    CHECK(judges(named, survey("SV-1", "before")));
    CHECK_FALSE(judges(named, survey("SV-3", "after")));
    const auto rise = rule(R"({"no_rise_over_baseline_m":1,"baseline_survey":"SV-2"})");
    CHECK_FALSE(judges(rise, survey("SV-2", "progress")));
}

TEST_CASE("how deep a claim must be is told when it is dug, of a ground at any time", "[surface]") {
    const auto least = rule(R"({"least_depth_m":9.6})");
    const auto both = rule(R"({"least_depth_m":9.3,"no_deeper_than_m":-9.9})");
    const auto named = rule(R"({"least_depth_m":9.6,"survey":"SV-2"})");
    const Claim dug = claim(-9.6);
    const Survey progress = survey("SV-2", "progress"), after = survey("SV-3", "after");
    CHECK(bounds_of(least, &dug, progress).empty());
    CHECK(bounds_of(least, &dug, after).highest_m);
    CHECK(bounds_of(least, nullptr, progress).highest_m);
    CHECK(bounds_of(named, &dug, progress).highest_m);
    // That it is too deep is told at once.
    CHECK(bounds_of(both, &dug, progress).lowest_m);
    CHECK_FALSE(bounds_of(both, &dug, progress).highest_m);
}

TEST_CASE("a surface stops releases where it is about them and the response is to stop", "[surface]") {
    const auto stops = [](const char* applies, const char* action) {
        return rule((std::string(R"({"least_depth_m":9,"applies":{"activity":")") + applies +
                     R"("},"responses":[{"action":"tell"},{"action":")" + action + R"("}]})")
                        .c_str())
            .stops_releases;
    };
    CHECK(stops("release", "stop"));
    CHECK(stops("both", "stop"));
    CHECK_FALSE(stops("dredge", "stop"));
    CHECK_FALSE(stops("release", "slow"));
    CHECK_FALSE(rule(R"({"least_depth_m":9})").stops_releases);
}

TEST_CASE("a share of the area may be past it, and what is not known counts against the works", "[surface]") {
    const auto strict = rule(R"({"no_deeper_than_m":-9.9})");
    const auto lenient = rule(R"({"no_deeper_than_m":-9.9,"tolerance_share":0.05})");
    CHECK(judged(strict, look(0)).state == Compliance::complied);
    CHECK(judged(strict, look(1)).state == Compliance::breached);
    CHECK(judged(lenient, look(50)).state == Compliance::complied);
    CHECK(judged(lenient, look(51)).state == Compliance::breached);
    CHECK(judged(lenient, look(30, 20)).state == Compliance::complied);
    CHECK(judged(lenient, look(30, 21)).state == Compliance::cannot_tell);
    CHECK(judged(lenient, look(30, 0, 970)).state == Compliance::cannot_tell);
    CHECK(judged(lenient, look(51, 500, 600)).state == Compliance::breached);
}

TEST_CASE("the reason says how much is past it, in doubt or not surveyed", "[surface]") {
    const auto lenient = rule(R"({"no_deeper_than_m":-9.9,"tolerance_share":0.05})");
    auto deep = look(123);
    deep.worst = WorstPixel{0.5, -10.4, 0.07, {711'640, 5'497'370}};
    CHECK(judged(lenient, deep).why ==
          "0.50 ± 0.07 m past it at most, at 711640.0 E 5497370.0 N, where the bed lies at -10.40 m; 12.3 % "
          "of its "
          "1000 m² is past it, 5.0 % may be");
    CHECK(judged(lenient, look(30, 21, 900)).why ==
          "3.0 % is past it, 2.1 % lies nearer to it than 2 u, 10.0 % was not surveyed");
    auto hole = look(0, 0, 900);
    hole.surveyed_m2 = 1'000;
    CHECK(judged(lenient, hole).why == "10.0 % is not in the baseline");
    auto shallow = look(0);
    shallow.worst = WorstPixel{-0.38, -9.52, 0.12, {711'640, 5'497'370}};
    CHECK(judged(lenient, shallow).why ==
          "0.38 ± 0.12 m to spare at least, at 711640.0 E 5497370.0 N, where the bed lies at -9.52 m");
    auto unsure = look(0, 1'000);
    unsure.has_u = false;
    CHECK(judged(lenient, unsure).state == Compliance::cannot_tell);
    CHECK(judged(lenient, unsure).why.find("u_m or s44_order") != std::string::npos);
}

}  // namespace spoilbook::test
