// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/surface_rule.h"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "model/consent/quantity.h"
#include "model/unit/shown.h"

namespace spoilbook {

namespace {

using nlohmann::json;

/// What rounding may leave of a share that is none.
constexpr double rounding = 1e-9;

std::optional<double> number(const json& body, const char* name) {
    return body.contains(name) ? std::optional(body.at(name).get<double>()) : std::nullopt;
}

bool answers_with_stop(const json& body) {
    const json responses = body.value("responses", json::array());
    return std::any_of(responses.begin(), responses.end(),
                       [](const json& response) { return response.value("action", "") == "stop"; });
}

std::string percent(double share) {
    return fmt::format("{:.1f} %", rounded_up(100 * share, 1));
}

std::string past_words(const SurfaceRule& rule, const SurfaceLook& look) {
    std::string words =
        fmt::format("{} of its {:.0f} m² is past it", percent(look.past_share()), look.area_m2);
    if (rule.tolerance_share > 0) words += fmt::format(", {} may be", percent(rule.tolerance_share));
    if (look.worst)
        words += fmt::format("; most {}, at {:.1f} E {:.1f} N, where the bed lies at {:.2f} m",
                             with_u(look.worst->past_m, look.worst->u_m, 2) + " m",
                             look.worst->place.easting_m, look.worst->place.northing_m, look.worst->level_m);
    return words;
}

std::string doubt_words(const SurfaceLook& look) {
    if (!look.has_u)
        return "how sure the survey is was not recorded: give the survey, and its baseline, u_m or s44_order";
    std::string words;
    const auto say = [&](double m2, const char* what) {
        const double share = m2 / look.area_m2;
        if (share <= rounding) return;
        words += fmt::format("{}{} {}", words.empty() ? "" : ", ", percent(share), what);
    };
    say(look.past_m2, "is past it");
    say(look.in_doubt_m2, "lies nearer to it than 2 u");
    say(look.not_surveyed_m2(), "was not surveyed");
    return words;
}

}  // namespace

std::optional<SurfaceRule> surface_rule_from(const json& body) {
    try {
        SurfaceRule rule;
        rule.no_deeper_than_m = number(body, "no_deeper_than_m");
        rule.least_depth_m = number(body, "least_depth_m");
        rule.no_rise_m = number(body, "no_rise_over_baseline_m");
        rule.allowance_m = number(body, "allowance_m");
        rule.tolerance_share = body.value("tolerance_share", 0.0);
        rule.survey = body.value("survey", "");
        rule.baseline_survey = body.value("baseline_survey", "");
        if (rule.is_by_target() && !rule.allowance_m) return std::nullopt;
        const Scope scope = scope_from(body);
        rule.claims = scope.claims;
        rule.grounds = scope.grounds;
        rule.cells = scope.cells;
        rule.stops_releases = judges_releases(body) && answers_with_stop(body);
        // What the condition names itself goes before what it applies to.
        if (body.contains("claim") || body.contains("ground")) {
            rule.claims.clear();
            rule.grounds.clear();
            rule.cells.clear();
        }
        if (body.contains("claim")) rule.claims.push_back(body.at("claim").get<std::string>());
        if (body.contains("ground")) rule.grounds.push_back(body.at("ground").get<std::string>());
        return rule;
    } catch (const json::exception&) {
        return std::nullopt;
    }
}

std::optional<SurfaceBounds> bounds_of(const SurfaceRule& rule, const Claim* claim) {
    SurfaceBounds bounds;
    const double allowance = rule.allowance_m.value_or(0);
    if (rule.no_deeper_than_m) bounds.lowest_m = *rule.no_deeper_than_m - allowance;
    if (rule.least_depth_m) bounds.highest_m = -*rule.least_depth_m + allowance;
    if (rule.no_rise_m) bounds.most_rise_m = *rule.no_rise_m + allowance;
    if (!rule.is_by_target()) return bounds;
    if (claim == nullptr || !claim->target_level_m) return std::nullopt;
    bounds.lowest_m = *claim->target_level_m - allowance;
    return bounds;
}

bool tells_of(const Survey& survey, const SurfaceRule& rule, const Claim* claim) {
    if (!rule.survey.empty()) return survey.survey == rule.survey;
    if (survey.kind == "before" || survey.survey == rule.baseline_survey) return false;
    const bool at_the_end = claim != nullptr && rule.least_depth_m;
    return !at_the_end || survey.kind == "after";
}

SurfaceJudged judged(const SurfaceRule& rule, const SurfaceLook& look) {
    if (look.past_share() > rule.tolerance_share + rounding)
        return {Compliance::breached, past_words(rule, look)};
    if (look.has_u && look.possible_share() <= rule.tolerance_share + rounding)
        return {Compliance::complied, ""};
    return {Compliance::cannot_tell, doubt_words(look)};
}

}  // namespace spoilbook
