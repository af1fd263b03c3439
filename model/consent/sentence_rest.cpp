// SPDX-License-Identifier: GPL-3.0-or-later
// Surface, watch and record.
#include <fmt/format.h>

#include "model/consent/sentence_parts.h"

namespace spoilbook::sentence {

namespace {

using nlohmann::json;

std::string joined(const std::vector<std::string>& parts) {
    return parts.empty() ? std::string(blank) : listed_words(parts);
}

/// ", while dredging, at Gannet Patch".
std::string where_words(const Members& body) {
    const std::string activity = activity_of(body);
    const std::string when = activity == "both"     ? ""
                             : activity == "dredge" ? ", for dredging"
                                                    : ", for releases";
    return when + scope_words(body);
}

void add_allowed(std::vector<std::string>& parts, const Members& allowed, const char* member,
                 const char* what) {
    for (const auto& [name, grounds] : allowed.object(member).items()) {
        std::vector<std::string> names;
        for (const json& ground : grounds) {
            if (ground.is_string()) names.push_back(ground.get<std::string>());
        }
        parts.push_back(fmt::format("what is {} {} goes to {} alone", what, name, joined(names)));
    }
}

}  // namespace

std::string of_surface(const Members& body) {
    std::string words = "The bed";
    if (body.has("claim")) words += " in claim " + body.text("claim");
    if (body.has("ground")) words += " of the ground " + body.text("ground");
    std::vector<std::string> parts;
    if (body.has("no_deeper_than_m"))
        parts.push_back(fmt::format("lies no deeper than {} m", body.number_or_blank("no_deeper_than_m")));
    if (body.has("least_depth_m"))
        parts.push_back(fmt::format("has a depth of {} m or more", body.number_or_blank("least_depth_m")));
    if (body.has("no_rise_over_baseline_m"))
        parts.push_back(fmt::format("rises no more than {} m over the baseline",
                                    body.number_or_blank("no_rise_over_baseline_m")));
    const bool is_by_target = parts.empty() && body.has("allowance_m");
    if (is_by_target) parts.emplace_back("lies no deeper than its target level");
    words += " " + joined(parts);
    if (body.has("allowance_m"))
        words += fmt::format(", with an allowance of {} m", body.number_or_blank("allowance_m"));
    if (body.has("baseline_survey")) words += ", the baseline being survey " + body.text("baseline_survey");
    if (body.has("survey")) words += ", by survey " + body.text("survey");
    if (body.has("tolerance_share"))
        words += fmt::format(", but for {} % of its area", body.number_or_blank("tolerance_share", 100));
    return words + where_words(body);
}

std::string of_watch(const Members& body) {
    std::string words = "A watch";
    if (const auto what = body.texts("for"); !what.empty()) words += " for " + listed_words(what);
    if (body.has("radius_m")) words += fmt::format(" within {} m", body.number_or_blank("radius_m"));
    if (body.has("before_minutes"))
        words += fmt::format(" from {} min before", body.number_or_blank("before_minutes"));
    words += where_words(body);
    if (body.has("action")) words += "; if seen: " + body.text("action");
    if (body.has("clear_minutes"))
        words += fmt::format("; clear again after {} min without", body.number_or_blank("clear_minutes"));
    if (body.is_true("log")) words += "; it is logged";
    return words;
}

std::string of_record(const Members& body) {
    std::vector<std::string> parts;
    const Members required(body.object("required"));
    for (const char* kind : {"trip", "load", "release"}) {
        const auto columns = required.texts(kind);
        if (!columns.empty()) parts.push_back(fmt::format("each {} has {}", kind, listed_words(columns)));
    }
    const Members allowed(body.object("allowed"));
    add_allowed(parts, allowed, "material_ground", "of the material");
    add_allowed(parts, allowed, "claim_ground", "from claim");
    const Members bounds(body.object("bounds"));
    if (bounds.has("draught_lost_m"))
        parts.push_back(fmt::format("no more than {} m of draught is lost in transit",
                                    bounds.number_or_blank("draught_lost_m")));
    if (body.has("retain_years"))
        parts.push_back(fmt::format("it is kept for {} years", body.number_or_blank("retain_years")));
    std::string words = "On record: ";
    for (std::size_t i = 0; i < parts.size(); ++i)
        words += (i > 0 ? "; " : "") + parts[i];
    return (parts.empty() ? words + blank : words) + where_words(body);
}

}  // namespace spoilbook::sentence
