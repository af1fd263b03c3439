// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/surface_rule.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
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
    return chance_text(share) + " %";
}

std::string worst_words(const WorstPixel& worst, bool has_u) {
    const std::string m =
        has_u ? with_u(std::abs(worst.past_m), worst.u_m, 2) : fmt::format("{:.2f}", std::abs(worst.past_m));
    return fmt::format("{} m {}, at {:.1f} E {:.1f} N, where the bed lies at {:.2f} m", m,
                       worst.past_m > 0 ? "past it at most" : "to spare at least", worst.place.easting_m,
                       worst.place.northing_m, worst.level_m);
}

std::string past_words(const SurfaceRule& rule, const SurfaceLook& look) {
    std::string words = look.worst ? worst_words(*look.worst, look.has_u) + "; " : "";
    words += fmt::format("{} of its {:.0f} m² is past it", percent(look.past_share()), look.area_m2);
    if (rule.tolerance_share > 0) words += fmt::format(", {} may be", percent(rule.tolerance_share));
    return words;
}

std::string doubt_words(const SurfaceRule& rule, const SurfaceLook& look) {
    if (!look.has_u)
        return fmt::format("how sure the survey{} is was not recorded: give it u_m or s44_order",
                           rule.no_rise_m ? ", or its baseline," : "");
    std::string words;
    const auto say = [&](double m2, const char* what) {
        const double share = m2 / look.area_m2;
        if (share <= rounding) return;
        words += fmt::format("{}{} {}", words.empty() ? "" : ", ", percent(share), what);
    };
    say(look.past_m2, "is past it");
    say(look.in_doubt_m2, "lies nearer to it than 2 u");
    say(look.not_surveyed_m2(), "was not surveyed");
    say(look.not_in_baseline_m2(), "is not in the baseline");
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

SurfaceBounds bounds_of(const SurfaceRule& rule, const Claim* claim, const Survey& survey) {
    SurfaceBounds bounds;
    const double allowance = rule.allowance_m.value_or(0);
    const bool is_done = claim == nullptr || survey.kind == "after" || !rule.survey.empty();
    if (rule.no_deeper_than_m) bounds.lowest_m = *rule.no_deeper_than_m - allowance;
    if (rule.least_depth_m && is_done) bounds.highest_m = -*rule.least_depth_m + allowance;
    if (rule.no_rise_m) bounds.most_rise_m = *rule.no_rise_m + allowance;
    if (rule.is_by_target() && claim != nullptr && claim->target_level_m)
        bounds.lowest_m = *claim->target_level_m - allowance;
    return bounds;
}

bool judges(const SurfaceRule& rule, const Survey& survey) {
    if (!rule.survey.empty()) return survey.survey == rule.survey;
    return survey.kind != "before" && survey.survey != rule.baseline_survey;
}

SurfaceJudged judged(const SurfaceRule& rule, const SurfaceLook& look) {
    if (look.past_share() > rule.tolerance_share + rounding)
        return {Compliance::breached, past_words(rule, look)};
    if (look.has_u && look.possible_share() <= rule.tolerance_share + rounding)
        return {Compliance::complied, look.worst ? worst_words(*look.worst, look.has_u) : ""};
    return {Compliance::cannot_tell, doubt_words(rule, look)};
}

}  // namespace spoilbook
