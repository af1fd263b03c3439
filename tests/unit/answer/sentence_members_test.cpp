// SPDX-License-Identifier: GPL-3.0-or-later
// No member that a condition may have is left out of its sentence. Which there are say the shapes by which
// consents.json is read; below stands each of them, with a value that is not its default.
#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "model/consent/sentence.h"
#include "model/folder/condition_kinds.h"
#include "model/folder/condition_members.h"

using namespace spoilbook;
using nlohmann::json;

namespace {

const json common = json::parse(R"({
    "applies": {"activity": "dredge", "claims": ["Q1"], "grounds": ["Q2"], "cells": ["Q3"], "materials": ["Q4"],
                "classes": ["sea"], "plant": ["Q5"]},
    "warn_at": [0.7], "open_question": "why?", "settled": {"by": "A", "on": "2031-05-07", "letter": "M"},
    "responses": [{"tier": 3, "action": "move", "within": {"n": 5, "unit": "months"}, "to": "X",
                   "clear": {"sites": "all", "held_hours": 7}}]})");

const std::map<std::string, std::vector<const char*>> bodies{
    {"quantity",
     {R"({"measure": "wet_t", "method": "tally", "op": "at_least", "value": 375, "each_of": "claim",
          "window": {"kind": "rolling", "n": 2, "unit": "days"},
          "reserve": {"value": 4, "unlocked_by": {"on": "2031-05-06", "by": "B", "letter": "L"}}})",
      R"({"measure": "wet_t", "share_of_total": 0.15, "of": 240, "window": {"kind": "mean", "years": 3},
          "reserve": {"value": 4, "unlocked_by": "a letter"}})",
      R"({"measure": "wet_t", "share_of_total": 0.15, "of": {"floor": 9},
          "window": {"kind": "phase", "from": "2031-01-01", "to": "2031-02-01"}})",
      R"({"measure": "wet_t", "value": 375, "window": {"kind": "campaign", "name": "N"}})"}},
    {"place",
     {R"({"inside": {"ground": "G"}, "test": "release_end", "inset_m": 5, "position_u_m_max": 6,
          "track_interval_s_max": 7})",
      R"({"inside": {"cell": "G"}})", R"({"inside": {"exclusion": "G"}})",
      R"({"inside": {"circle": {"lat": 1, "lon": 2, "radius_m": 3}}})", R"({"outside": {"ground": "G"}})",
      R"({"outside": {"cell": "G"}})", R"({"outside": {"exclusion": "G"}})",
      R"({"outside": {"circle": {"lat": 1, "lon": 2, "radius_m": 3}}})"}},
    {"time", {R"({"mode": "allow", "dates": ["07-03..07-09"], "hours": ["03:00..04:00"], "daylight": "night",
          "weekdays": ["sun"], "tide_level_m": {"min": 1, "max": 2}, "tied_to": "slack water"})"}},
    {"series",
     {R"({"variable": "turbidity", "sites": ["S"], "control": "C", "over_minutes": 30, "min_complete": 0.5,
          "statistic": {"kind": "percentile", "p": 80, "type": 7}, "compare": {"above_control": 5},
          "while": "working", "passes": {"held_hours": 2}, "tier": 2, "clear": {"sites": ["S"], "held_hours": 3},
          "max_age_hours": 4})",
      R"({"variable": "wind_kn", "statistic": {"kind": "ewma", "half_life_min": 9, "alpha": 0.2},
          "compare": {"absolute": 3}, "while": {"working_plus": {"hours": 6}},
          "passes": {"hours_in": {"hours": 2, "days": 3}}, "clear": {"sites": "all"}})",
      R"({"variable": "turbidity", "compare": {"times_control": 2}, "passes": {"at_once": true}})",
      R"({"variable": "turbidity", "compare": {"higher_of": [{"times_control": 2}, {"above_control": 5}]}})",
      R"({"variable": "turbidity", "compare": {"bands": [
            {"control_from": 1, "control_to": 2, "absolute": 3}, {"control_from": 1, "above_control": 4},
            {"control_to": 2, "times_control": 5}]}})",
      R"({"variable": "turbidity", "compare": {"baseline": {"percentile": 80, "site": "S", "from": "2031-01-01",
            "to": "2031-02-01", "value": 1, "times": 2, "plus": 3}}})",
      R"({"variable": "turbidity", "control": "C",
          "compare": {"paired_above_control": {"x": 1, "lag_min": 2, "tolerance_min": 3}}})"}},
    {"surface",
     {R"({"claim": "A", "ground": "B", "no_deeper_than_m": -1, "no_rise_over_baseline_m": 2, "baseline_survey": "C",
          "least_depth_m": 3, "allowance_m": 4, "survey": "D", "tolerance_share": 0.05})"}},
    {"duty",
     {R"({"what": "plan", "when": {"cycle": "year"}, "due": {"n": 2, "unit": "hours", "after": "the letter"},
          "nil_required": true, "blocks": ["dredge"]})",
      R"({"what": "plan", "when": {"on_event": "spill"}})",
      R"({"what": "plan", "when": {"on_date": "2031-01-01"}})",
      R"({"what": "plan", "when": {"every": {"measure": "wet_t", "value": 4}}})"}},
    {"watch",
     {R"({"before_minutes": 1, "radius_m": 2, "for": ["seals"], "action": "wait", "clear_minutes": 3, "log": true})"}},
    {"record",
     {R"({"required": {"trip": ["a"], "load": ["b"], "release": ["c"]}, "bounds": {"draught_lost_m": 1},
          "allowed": {"material_ground": {"E": ["F"]}, "claim_ground": {"E": ["F"]}}, "retain_years": 2})"}},
    {"text", {R"({"due": "2031-01-01"})", R"({"due": {"n": 2, "unit": "hours", "after": "it"}})"}}};

std::string told(const std::string& kind, const json& body) {
    Condition condition;
    condition.kind = kind;
    condition.text = "as it is";
    condition.body = body.dump();
    std::string text = condition_sentence(condition);
    for (const auto& note : condition_notes(condition, Zone::utc()))
        text += " " + note;
    return text;
}

/// Paths of all members below: /responses/0/within/n. A list of texts or numbers is one.
void gather(const json& value, const json::json_pointer& at, std::vector<json::json_pointer>& leaves) {
    const bool nested =
        value.is_object() || (value.is_array() && !value.empty() && value.front().is_object());
    if (!nested) return leaves.push_back(at);
    for (const auto& [name, part] : value.items())
        gather(part, value.is_array() ? at / std::stoul(name) : at / name, leaves);
}

/// Without the places in lists: responses.within.n.
std::string member_name(const json::json_pointer& at) {
    std::string name;
    for (auto left = at; !left.empty(); left = left.parent_pointer()) {
        const std::string& token = left.back();
        const bool is_place = token.find_first_not_of("0123456789") == std::string::npos;
        if (!is_place) name = name.empty() ? token : token + "." + name;
    }
    return name;
}

void list_members(const ObjectShape& shape, const std::string& path, int depth,
                  std::set<std::string>& members) {
    for (const auto& member : shape.members) {
        const std::string at = path.empty() ? member.name : path + "." + member.name;
        // higher_of holds what it is part of: once is enough.
        if (member.shape == nullptr)
            members.insert(member.holds == Holds::lists ? at + ".E" : at);
        else if (depth < 4 && member.name != "higher_of")
            list_members(member.shape(), at, depth + 1, members);
    }
}

std::set<std::string> known_members(const std::string& kind) {
    std::set<std::string> members;
    list_members(condition_shape(kind), "", 0, members);
    // Fields of the condition itself: its number, its words, its kind and its time.
    for (const char* field : {"condition", "text", "wording", "kind", "from", "to"})
        members.erase(field);
    // A member that holds two things, a word or an object, stands here by the object's own members too.
    return members;
}

json with_common(json body) {
    body.update(common);
    return body;
}

}  // namespace

TEST_CASE("no member of a condition is left out of its sentence", "[sentence]") {
    for (const auto& [kind, examples] : bodies) {
        std::set<std::string> unseen = known_members(kind);
        for (std::size_t i = 0; i < examples.size(); ++i) {
            const json plain = json::parse(examples[i]);
            const json whole = i == 0 ? with_common(plain) : plain;
            std::vector<json::json_pointer> leaves;
            gather(whole, json::json_pointer(), leaves);
            for (const auto& leaf : leaves) {
                unseen.erase(member_name(leaf));
                json without = whole;
                without[leaf.parent_pointer()].erase(leaf.back());
                INFO(kind << " " << leaf.to_string() << ": " << told(kind, whole));
                // Passing at once is what is left out means.
                if (leaf.back() != "at_once") CHECK(told(kind, without) != told(kind, whole));
            }
        }
        INFO(kind << " lacks an example of " << (unseen.empty() ? "nothing" : *unseen.begin()));
        CHECK(unseen.empty());
    }
}

TEST_CASE("the examples of the sentence are conditions that a book takes", "[sentence]") {
    for (const auto& [kind, examples] : bodies) {
        for (const char* example : examples) {
            Complaints complaints;
            const std::string file = "consents.json";
            const Zone zone = Zone::utc();
            json body = with_common(json::parse(example));
            check_condition(body, kind, "", {file, zone, complaints});
            INFO(kind << " " << example);
            CHECK(complaints.refusals().empty());
        }
    }
}
