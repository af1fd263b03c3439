// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/surface_rule.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

namespace spoilbook::test {
namespace {

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
    made.covered_m2 = covered_m2;
    made.past_m2 = past_m2;
    made.in_doubt_m2 = in_doubt_m2;
    return made;
}

}  // namespace

TEST_CASE("an allowance widens every bound, and a depth is a level turned round", "[surface]") {
    const auto bounds = bounds_of(
        rule(R"({"no_deeper_than_m":-9.6,"least_depth_m":9,"no_rise_over_baseline_m":1,"allowance_m":0.3})"),
        nullptr);
    CHECK(*bounds->lowest_m == Approx(-9.9).margin(1e-12));
    CHECK(*bounds->highest_m == Approx(-8.7).margin(1e-12));
    CHECK(*bounds->most_rise_m == Approx(1.3).margin(1e-12));
}

TEST_CASE("an allowance alone is that of a claim's target level", "[surface]") {
    const auto by_target = rule(R"({"claim":"FB2","allowance_m":0.3})");
    const Claim dug = claim(-9.6);
    CHECK(*bounds_of(by_target, &dug)->lowest_m == Approx(-9.9).margin(1e-12));
    CHECK_FALSE(bounds_of(by_target, &dug)->highest_m);
    const Claim blank = claim({});
    CHECK_FALSE(bounds_of(by_target, &blank));
    CHECK_FALSE(bounds_of(by_target, nullptr));
}

TEST_CASE("a condition that says no level and no allowance cannot be held against a bed", "[surface]") {
    CHECK_FALSE(surface_rule_from(json::parse(R"({"claim":"FB2","tolerance_share":0.1})")));
    CHECK_FALSE(surface_rule_from(json::parse(R"({"no_deeper_than_m":"deep"})")));
    CHECK_FALSE(surface_rule_from(json::parse("[]")));
}

TEST_CASE("where it holds is what it names, else what it applies to", "[surface]") {
    const auto named = rule(R"({"claim":"FB2","allowance_m":0,"applies":{"claims":["FB1"],"grounds":["Bank"]}})");
    CHECK(named.claims == std::vector<std::string>{"FB2"});
    CHECK(named.grounds.empty());
    const auto scoped = rule(R"({"least_depth_m":9,"applies":{"claims":["FB1"],"cells":["C4"]}})");
    CHECK(scoped.claims == std::vector<std::string>{"FB1"});
    CHECK(scoped.cells == std::vector<std::string>{"C4"});
}

TEST_CASE("a survey before the works tells nothing of them", "[surface]") {
    const auto deep = rule(R"({"claim":"FB2","no_deeper_than_m":-9.9})");
    const Claim dug = claim(-9.6);
    CHECK_FALSE(tells_of(survey("SV-1", "before"), deep, &dug));
    CHECK(tells_of(survey("SV-2", "progress"), deep, &dug));
    CHECK(tells_of(survey("SV-3", "after"), deep, &dug));
    CHECK(tells_of(survey("SV-4", ""), deep, &dug));
}

TEST_CASE("how deep a claim must be is told when it is dug, of a ground at any time", "[surface]") {
    const auto least = rule(R"({"least_depth_m":9.6})");
    const Claim dug = claim(-9.6);
    CHECK_FALSE(tells_of(survey("SV-2", "progress"), least, &dug));
    CHECK(tells_of(survey("SV-3", "after"), least, &dug));
    CHECK(tells_of(survey("SV-2", "progress"), least, nullptr));
}

TEST_CASE("the survey that a condition names tells, and no other; a named baseline never does", "[surface]") {
    const auto named = rule(R"({"claim":"FB2","no_deeper_than_m":-9.9,"survey":"SV-1"})");
    CHECK(tells_of(survey("SV-1", "before"), named, nullptr));
    CHECK_FALSE(tells_of(survey("SV-3", "after"), named, nullptr));
    const auto rise = rule(R"({"no_rise_over_baseline_m":1,"baseline_survey":"SV-2"})");
    CHECK_FALSE(tells_of(survey("SV-2", "progress"), rise, nullptr));
}

TEST_CASE("a share of the area may be past it, and what is not known counts against the works", "[surface]") {
    const auto strict = rule(R"({"no_deeper_than_m":-9.9})");
    const auto lenient = rule(R"({"no_deeper_than_m":-9.9,"tolerance_share":0.05})");
    CHECK(judged(strict, look(0)).state == Compliance::complied);
    CHECK(judged(strict, look(0)).why.empty());
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
          "12.3 % of its 1000 m² is past it, 5.0 % may be; most 0.50 ± 0.07 m, at 711640.0 E 5497370.0 N, where "
          "the bed lies at -10.40 m");
    CHECK(judged(lenient, look(30, 21, 900)).why ==
          "3.0 % is past it, 2.1 % lies nearer to it than 2 u, 10.0 % was not surveyed");
    auto unsure = look(0, 1'000);
    unsure.has_u = false;
    CHECK(judged(lenient, unsure).state == Compliance::cannot_tell);
    CHECK(judged(lenient, unsure).why.find("u_m or s44_order") != std::string::npos);
}

}  // namespace spoilbook::test
