// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/sentence.h"

#include <fmt/format.h>

#include <map>

#include "model/consent/sentence_parts.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

using nlohmann::json;
using sentence::Members;

json members_of(const Condition& condition) {
    const json body = json::parse(condition.body.empty() ? "{}" : condition.body, nullptr, false);
    return body.is_object() ? body : json::object();
}

/// Whatever fits no kind is its own sentence, in its own words else in the consent's.
std::string of_text(const Condition& condition, const Members& body) {
    std::string words = condition.text.empty() ? condition.wording : condition.text;
    if (words.empty()) words = sentence::blank;
    while (!words.empty() && words.back() == '.')
        words.pop_back();
    words += sentence::scope_words(body);
    const std::string activity = sentence::activity_of(body);
    if (activity != "both") words += activity == "dredge" ? ", for dredging" : ", for releases";
    return body.has("due") ? words + ", due" + sentence::due_words(body) : words;
}

std::string action_words(const std::string& action) {
    return action == "change_cell" ? "change the cell" : action;
}

std::string response_words(const Members& response) {
    std::string words = response.has("tier") ? fmt::format("At tier {}: ", response.number_or_blank("tier"))
                                             : "When passed: ";
    words += action_words(response.text("action"));
    if (response.has("within"))
        words += " within " + sentence::span_words(Members(response.object("within")));
    if (response.has("to")) words += ", to " + response.text("to");
    if (response.has("clear")) words += "; until clear " + sentence::clear_words(response.object("clear"));
    return words + ".";
}

std::string settled_words(const Members& settled) {
    std::string words = "Settled";
    if (settled.has("by")) words += " by " + settled.text("by");
    if (settled.has("on")) words += " on " + settled.text("on");
    if (settled.has("letter")) words += ": " + settled.text("letter");
    return words + ".";
}

std::string warned_words(const json& shares) {
    std::vector<std::string> parts;
    for (const json& share : shares) {
        if (share.is_number()) parts.push_back(sentence::numbered(share.get<double>() * 100) + " %");
    }
    return fmt::format("Shown as warned at {} of the limit.", sentence::listed_words(parts));
}

}  // namespace

std::string condition_sentence(const Condition& condition) {
    static const std::map<std::string, std::string (*)(const Members&)> kinds{
        {"quantity", sentence::of_quantity}, {"place", sentence::of_place},     {"time", sentence::of_time},
        {"series", sentence::of_series},     {"surface", sentence::of_surface}, {"duty", sentence::of_duty},
        {"watch", sentence::of_watch},       {"record", sentence::of_record}};
    const json body = members_of(condition);
    const auto found = kinds.find(condition.kind);
    return (found == kinds.end() ? of_text(condition, Members(body)) : found->second(Members(body))) + ".";
}

std::vector<std::string> condition_notes(const Condition& condition, const Zone& zone) {
    const json body = members_of(condition);
    const Members members(body);
    std::vector<std::string> notes;
    if (condition.from && condition.to)
        notes.push_back(fmt::format("In force from {} until {}.", instant_text(*condition.from, zone),
                                    instant_text(*condition.to, zone)));
    else if (condition.from)
        notes.push_back(fmt::format("In force from {}.", instant_text(*condition.from, zone)));
    else if (condition.to)
        notes.push_back(fmt::format("In force until {}.", instant_text(*condition.to, zone)));
    if (!members.list("warn_at").empty()) notes.push_back(warned_words(members.list("warn_at")));
    for (const json& response : members.list("responses"))
        notes.push_back(response_words(Members(response)));
    if (members.has("open_question")) notes.push_back("Open question: " + members.text("open_question"));
    if (members.has("settled")) notes.push_back(settled_words(Members(members.object("settled"))));
    return notes;
}

}  // namespace spoilbook
