// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/series_rule.h"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>
#include <stdexcept>

#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

using nlohmann::json;

std::optional<double> number_in(const json& body, const char* name) {
    if (!body.contains(name)) return std::nullopt;
    return body.at(name).get<double>();
}

std::optional<Instant> time_in(const json& body, const char* name, const Zone& zone) {
    if (!body.contains(name)) return std::nullopt;
    const auto at = parse_instant_or_day(body.at(name).get<std::string>(), zone);
    if (!at) throw std::invalid_argument(name);
    return *at;
}

StatisticRule statistic_from(const json& body) {
    StatisticRule rule;
    if (!body.contains("statistic")) return rule;
    static constexpr std::array names{"mean", "median", "percentile", "ewma", "instant"};
    const auto& given = body.at("statistic");
    const auto found = std::find(names.begin(), names.end(), given.at("kind").get<std::string>());
    if (found == names.end()) throw std::invalid_argument("statistic");
    rule.kind = static_cast<StatisticKind>(found - names.begin());
    rule.p = given.value("p", rule.p);
    rule.type = static_cast<int>(given.value("type", 7.0));
    rule.half_life_min = number_in(given, "half_life_min");
    if (rule.kind == StatisticKind::ewma && !rule.half_life_min) rule.alpha = given.at("alpha").get<double>();
    return rule;
}

Baseline baseline_from(const json& body, const Zone& zone) {
    Baseline baseline;
    baseline.percentile = number_in(body, "percentile");
    baseline.value = number_in(body, "value");
    if (!baseline.percentile && !baseline.value) throw std::invalid_argument("baseline");
    baseline.site = body.value("site", "");
    baseline.from = time_in(body, "from", zone);
    baseline.to = time_in(body, "to", zone);
    baseline.times = body.value("times", 1.0);
    baseline.plus = body.value("plus", 0.0);
    return baseline;
}

Compare compare_from(const json& body, const Zone& zone) {
    Compare compare;
    if (body.contains("higher_of")) {
        compare.form = CompareForm::higher_of;
        for (const auto& part : body.at("higher_of"))
            compare.parts.push_back(compare_from(part, zone));
        if (compare.parts.empty()) throw std::invalid_argument("higher_of");
    } else if (body.contains("bands")) {
        compare.form = CompareForm::bands;
        for (const auto& band : body.at("bands"))
            compare.bands.push_back({number_in(band, "control_from"), number_in(band, "control_to"),
                                     number_in(band, "absolute"), number_in(band, "above_control"),
                                     number_in(band, "times_control")});
    } else if (body.contains("baseline")) {
        compare.form = CompareForm::baseline;
        compare.baseline = baseline_from(body.at("baseline"), zone);
    } else if (body.contains("paired_above_control")) {
        compare.form = CompareForm::paired_above_control;
        const auto& pairs = body.at("paired_above_control");
        compare.x = pairs.at("x").get<double>();
        compare.lag_min = pairs.value("lag_min", 0.0);
        compare.tolerance_min = number_in(pairs, "tolerance_min");
    } else if (body.contains("above_control")) {
        compare.form = CompareForm::above_control;
        compare.x = body.at("above_control").get<double>();
    } else if (body.contains("times_control")) {
        compare.form = CompareForm::times_control;
        compare.x = body.at("times_control").get<double>();
    } else {
        compare.x = body.at("absolute").get<double>();
    }
    return compare;
}

void read_while(const json& body, SeriesRule& rule) {
    if (!body.contains("while")) return;
    const auto& given = body.at("while");
    rule.only_working = given.is_object() || given == "working";
    if (given.is_object()) rule.plus_hours = given.at("working_plus").at("hours").get<double>();
}

Passing passing_from(const json& body) {
    Passing passing;
    if (!body.contains("passes")) return passing;
    const auto& given = body.at("passes");
    passing.held_hours = given.value("held_hours", 0.0);
    if (!given.contains("hours_in")) return passing;
    passing.kind = Passing::Kind::hours_in;
    passing.hours = given.at("hours_in").at("hours").get<double>();
    passing.days = given.at("hours_in").at("days").get<double>();
    return passing;
}

AllClear clear_from(const json& body) {
    AllClear clear;
    clear.held_hours = body.value("held_hours", 0.0);
    if (!body.contains("sites")) return clear;
    const auto& sites = body.at("sites");
    if (sites.is_array()) {
        clear.sites = AllClear::Sites::listed;
        clear.listed = sites.get<std::vector<std::string>>();
    } else if (sites == "all") {
        clear.sites = AllClear::Sites::all;
    }
    return clear;
}

/// The condition's own all-clear; where it has none, that of the response to its tier.
void read_responses(const json& body, SeriesRule& rule) {
    if (body.contains("clear")) rule.clear = clear_from(body.at("clear"));
    bool known = body.contains("clear");
    for (const auto& given : body.value("responses", json::array())) {
        Response response;
        response.tier = number_in(given, "tier");
        response.action = given.value("action", "");
        if (given.contains("within"))
            response.within = Within{given.at("within").at("n").get<double>(),
                                     given.at("within").at("unit").get<std::string>()};
        response.to = given.value("to", "");
        const bool ours = !response.tier || response.tier == rule.tier;
        if (!known && ours && given.contains("clear")) {
            rule.clear = clear_from(given.at("clear"));
            known = true;
        }
        rule.responses.push_back(std::move(response));
    }
}

}  // namespace

Checked<SeriesRule> series_rule_from(const Condition& condition, const Zone& zone) {
    try {
        const auto body = condition.body.empty() ? json::object() : json::parse(condition.body);
        SeriesRule rule;
        rule.variable = body.value("variable", "");
        if (body.contains("applies")) rule.activity = body.at("applies").value("activity", "");
        if (rule.activity.empty()) rule.activity = "both";
        rule.sites = body.value("sites", std::vector<std::string>{});
        rule.control = body.value("control", "");
        rule.statistic = statistic_from(body);
        rule.over_min = body.value("over_minutes", 0.0);
        rule.min_complete = body.value("min_complete", 0.0);
        rule.compare = compare_from(body.at("compare"), zone);
        read_while(body, rule);
        rule.passes = passing_from(body);
        rule.tier = number_in(body, "tier");
        read_responses(body, rule);
        rule.max_age_hours = body.value("max_age_hours", rule.max_age_hours);
        return rule;
    } catch (const std::exception& error) {
        return Refusal{"condition-does-not-read", "condition " + condition.condition,
                       std::string("its members do not read: ") + error.what(), "see docs/conditions.md"};
    }
}

}  // namespace spoilbook
