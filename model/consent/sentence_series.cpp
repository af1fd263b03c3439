// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "model/consent/sentence_parts.h"

namespace spoilbook::sentence {

namespace {

using nlohmann::json;

std::string unit_of(const Members& body) {
    const std::string variable = body.text("variable");
    if (variable == "wave_height_m") return " m";
    return variable == "wind_kn" ? " kn" : "";
}

std::string variable_words(const Members& body) {
    const std::string variable = body.text("variable");
    if (variable == "wave_height_m") return "Significant wave height";
    if (variable == "wind_kn") return "Wind";
    return variable == "turbidity" ? "Turbidity" : variable;
}

std::string span_of_minutes(double minutes) {
    return minutes >= 60 ? numbered(minutes / 60) + " h" : numbered(minutes) + " min";
}

std::string statistic_words(const Members& body) {
    const Members statistic(body.object("statistic"));
    const std::string kind = statistic.has("kind") ? statistic.text("kind") : "instant";
    std::string words = "a reading";
    if (kind == "mean" || kind == "median") words = "the " + kind;
    if (kind == "percentile") words = fmt::format("the {}th percentile", statistic.number_or_blank("p"));
    if (kind == "ewma") words = "the exponentially weighted mean";
    if (statistic.has("half_life_min"))
        words += fmt::format(", half-life {} min,", statistic.number_or_blank("half_life_min"));
    if (statistic.has("alpha")) words += fmt::format(", alpha {},", statistic.number_or_blank("alpha"));
    if (statistic.has("type"))
        words += fmt::format(" (Hyndman and Fan type {})", statistic.number_or_blank("type"));
    if (statistic.has("p") && kind != "percentile")
        words += fmt::format(" (p {})", statistic.number_or_blank("p"));
    if (const auto minutes = body.number("over_minutes")) words += " over " + span_of_minutes(*minutes);
    if (body.has("min_complete"))
        words += fmt::format(", with {} % or more of its readings there,",
                             body.number_or_blank("min_complete", 100));
    return words;
}

std::string compare_words(const Members& compare, const std::string& control, const std::string& unit);

std::string band_words(const Members& band, const std::string& control, const std::string& unit) {
    std::string words = compare_words(band, control, unit) + " while the control is";
    if (band.has("control_from")) words += " " + band.number_or_blank("control_from") + " or more";
    if (band.has("control_to"))
        words += std::string(band.has("control_from") ? " and" : "") + " below " +
                 band.number_or_blank("control_to");
    if (!band.has("control_from") && !band.has("control_to")) words += " anything";
    return words;
}

std::string baseline_words(const Members& base) {
    std::string words =
        base.has("value") ? "a baseline of " + base.number_or_blank("value") : std::string("a baseline");
    if (base.has("percentile"))
        words = fmt::format("{}, the {}th percentile", words, base.number_or_blank("percentile"));
    if (base.has("site")) words += " at " + base.text("site");
    if (base.has("from")) words += " from " + base.text("from");
    if (base.has("to")) words += " until " + base.text("to");
    if (base.has("times")) words = base.number_or_blank("times") + " times " + words;
    if (base.has("plus")) words += ", plus " + base.number_or_blank("plus");
    return words;
}

std::string paired_words(const Members& paired, const std::string& control) {
    std::string words =
        fmt::format("more than {} above {}, reading by reading", paired.number_or_blank("x"), control);
    if (paired.has("lag_min")) words += fmt::format(" at a lag of {} min", paired.number_or_blank("lag_min"));
    if (paired.has("tolerance_min"))
        words += fmt::format(" within {} min", paired.number_or_blank("tolerance_min"));
    return words;
}

std::string compare_words(const Members& compare, const std::string& control, const std::string& unit) {
    if (compare.has("absolute")) return "above " + compare.number_or_blank("absolute") + unit;
    if (compare.has("above_control"))
        return fmt::format("more than {}{} above {}", compare.number_or_blank("above_control"), unit,
                           control);
    if (compare.has("times_control"))
        return fmt::format("more than {} times {}", compare.number_or_blank("times_control"), control);
    if (compare.has("baseline")) return "above " + baseline_words(Members(compare.object("baseline")));
    if (compare.has("paired_above_control"))
        return paired_words(Members(compare.object("paired_above_control")), control);
    std::vector<std::string> parts;
    for (const json& part : compare.list("higher_of"))
        parts.push_back(compare_words(Members(part), control, unit));
    if (!parts.empty()) return "over the highest of these: " + listed_words(parts, "or");
    for (const json& band : compare.list("bands"))
        parts.push_back(band_words(Members(band), control, unit));
    return parts.empty() ? "above " + std::string(blank) : listed_words(parts, "or");
}

std::string passes_words(const Members& passes) {
    if (passes.has("held_hours"))
        return fmt::format(", held for {} h,", passes.number_or_blank("held_hours"));
    if (!passes.has("hours_in")) return "";
    const Members hours(passes.object("hours_in"));
    return fmt::format(", for {} h in any {} days,", hours.number_or_blank("hours"),
                       hours.number_or_blank("days"));
}

std::string while_words(const Members& body) {
    if (!body.has("while")) return "";
    const Members plus(Members(body.object("while")).object("working_plus"));
    if (plus.has("hours"))
        return fmt::format(" while work goes on and {} h after,", plus.number_or_blank("hours"));
    return body.text("while") == "working" ? " while work goes on," : "";
}

}  // namespace

std::string of_series(const Members& body) {
    std::string words = variable_words(body);
    if (const auto sites = body.texts("sites"); !sites.empty())
        words += " at " + listed_words(sites, "or");
    else if (body.text("variable") == "turbidity")
        words += " at any site that is no control";
    const std::string control =
        body.has("control") ? "the control " + body.text("control") : std::string("the control");
    words += ": " + statistic_words(body) + " " +
             compare_words(Members(body.object("compare")), control, unit_of(body));
    words += passes_words(Members(body.object("passes"))) + while_words(body);
    words += body.has("tier") ? " passes tier " + body.number_or_blank("tier") : std::string(" passes it");
    const std::string activity = activity_of(body);
    if (activity != "both") words += activity == "dredge" ? ", of dredging" : ", of releases";
    words += scope_words(body);
    if (body.has("clear")) words += "; clear again " + clear_words(body.object("clear"));
    if (body.has("max_age_hours"))
        words += fmt::format("; an observation counts for {} h", body.number_or_blank("max_age_hours"));
    return words;
}

}  // namespace spoilbook::sentence
