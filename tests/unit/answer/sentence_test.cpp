// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/sentence.h"

#include <catch2/catch.hpp>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

using namespace spoilbook;
using nlohmann::json;

namespace {

Condition stored(json members) {
    Condition condition;
    condition.condition = members.value("condition", "");
    condition.text = members.value("text", "");
    condition.wording = members.value("wording", "");
    condition.kind = members.at("kind");
    for (const char* field : {"condition", "text", "wording", "kind"})
        members.erase(field);
    condition.body = members.dump();
    return condition;
}

std::string said(const char* members) {
    return condition_sentence(stored(json::parse(members)));
}

}  // namespace

TEST_CASE("a limit is one sentence with its amount, window, time of counting and place", "[sentence]") {
    CHECK(said(R"({"kind":"quantity","applies":{"activity":"release","grounds":["Gannet Patch"]},
        "measure":"in_situ_m3","op":"at_most","value":215000,"window":{"kind":"rolling","n":12,"unit":"months"}})") ==
          "No more than 215 000 m³ in situ in any 12 months, counted at release, at Gannet Patch.");
    CHECK(
        said(R"({"kind":"quantity","measure":"in_situ_m3","share_of_total":0.15,"of":240000,"each_of":"cell",
        "window":{"kind":"term"}})") ==
        "No more than 15 % of 240 000 m³ in situ for each cell over the whole term of the consent, counted "
        "at "
        "release.");
    CHECK(
        said(
            R"({"kind":"quantity","measure":"trips","value":6,"window":{"kind":"calendar","unit":"day"}})") ==
        "No more than 6 trips in a calendar day, counted at release.");
    CHECK(said(R"({"kind":"quantity","applies":{"activity":"dredge","claims":["FB2","FB3"],"plant":["Pipi"]},
        "measure":"dry_t","method":"ullage","op":"at_least","value":1250.5,"window":{"kind":"mean","years":3},
        "reserve":{"value":200,"unlocked_by":{"on":"2026-03-01","by":"the Council","letter":"9"}}})") ==
          "At least 1 250.5 t dry a year, as the mean of any 3 years, counted when it is loaded, from claims "
          "FB2 or "
          "FB3, by Pipi, as known by ullage alone, of which 200 is held back until it is unlocked by the "
          "Council "
          "(letter 9), on 2026-03-01.");
}

TEST_CASE("places and times are told as a consent tells them", "[sentence]") {
    CHECK(
        said(R"({"kind":"place","inside":{"ground":"Gannet Patch"},"test":"whole_release","inset_m":20})") ==
        "Each release from doors open to empty lies inside the ground Gannet Patch, 20 m or more from its "
        "line.");
    CHECK(said(R"({"kind":"place","outside":{"circle":{"lat":-40.61,"lon":179.6,"radius_m":200}},
        "test":"release_start"})") ==
          "Each release begins outside the circle of 200 m about 40.61° S, 179.6° E.");
    CHECK(said(R"({"kind":"time","applies":{"activity":"release"},"mode":"forbid","dates":["09-01..10-15"],
        "hours":["20:00..06:00"]})") ==
          "No release between 20:00 and 06:00 and from 1 September to 15 October, both included.");
    CHECK(said(R"({"kind":"time","mode":"allow","weekdays":["mon","sat"],"daylight":"day",
        "tide_level_m":{"min":1.2}})") ==
          "Dredging or release only on a Monday or Saturday, between sunrise and sunset and while the tide "
          "is 1.2 m "
          "or more.");
}

TEST_CASE("a trigger names its sites, statistic, level and hold", "[sentence]") {
    CHECK(said(R"({"kind":"series","applies":{"activity":"release"},"variable":"wave_height_m",
        "statistic":{"kind":"instant"},"compare":{"absolute":1.8},"passes":{"at_once":true}})") ==
          "Significant wave height: a reading above 1.8 m passes it, of releases.");
    const json tier = json::parse(R"({"kind":"series","variable":"turbidity","sites":["R1"],"control":"C1",
        "statistic":{"kind":"median"},"over_minutes":360,"min_complete":0.75,"compare":{"above_control":10},
        "passes":{"held_hours":2},"tier":2,"clear":{"sites":"same","held_hours":6},"warn_at":[0.8,0.95],
        "responses":[{"tier":2,"action":"slow","within":{"n":2,"unit":"hours"},"to":"authority"}],
        "open_question":"NTU or FNU?","settled":{"by":"the Council","on":"2026-02-01","letter":"12"}})");
    CHECK(condition_sentence(stored(tier)) ==
          "Turbidity at R1: the median over 6 h, with 75 % or more of its readings there, more than 10 above "
          "the "
          "control C1, held for 2 h, passes tier 2; clear again after 6 h not over at the same site.");
    CHECK(condition_notes(stored(tier), Zone::utc()) ==
          std::vector<std::string>{"Shown as warned at 80 % and 95 % of the limit.",
                                   "At tier 2: slow within 2 hours, to authority.",
                                   "Open question: NTU or FNU?",
                                   "Settled by the Council on 2026-02-01: 12."});
}

TEST_CASE("duties say what, by when and from when it is counted", "[sentence]") {
    CHECK(said(R"({"kind":"duty","what":"survey","when":{"every":{"measure":"in_situ_m3","value":50000}},
        "due":{"n":20,"unit":"working_days"}})") ==
          "A survey is due within 20 working days, counted from each 50 000 m³ in situ released.");
    CHECK(
        said(R"({"kind":"duty","what":"return","when":{"cycle":"month"},"due":{"n":10,"unit":"working_days"},
        "nil_required":true,"blocks":["release"]})") ==
        "A return is due within 10 working days, counted from the end of each month, also when there is "
        "nothing to "
        "tell; while it is overdue, no release.");
}

TEST_CASE("the other kinds have their sentence too, and a text keeps its own", "[sentence]") {
    CHECK(said(R"({"kind":"surface","claim":"FB2","no_deeper_than_m":-8.3,"tolerance_share":0.05})") ==
          "The bed in claim FB2 lies no deeper than −8.3 m, but for 5 % of its area.");
    CHECK(said(R"({"kind":"surface","claim":"FB2","allowance_m":0.3})") ==
          "The bed in claim FB2 lies no deeper than its target level, with an allowance of 0.3 m.");
    CHECK(said(R"({"kind":"watch","before_minutes":30,"radius_m":300,"for":["dolphins","whales"],
        "action":"wait","clear_minutes":20,"log":true})") ==
          "A watch for dolphins and whales within 300 m from 30 min before; if seen: wait; clear again after "
          "20 min "
          "without; it is logged.");
    CHECK(said(R"({"kind":"record","required":{"trip":["departed","tug"]},
        "allowed":{"material_ground":{"silty sand":["Gannet Patch"]}},"bounds":{"draught_lost_m":0.1},
        "retain_years":5})") ==
          "On record: each trip has departed and tug; what is of the material silty sand goes to Gannet "
          "Patch alone; "
          "no more than 0.1 m of draught is lost in transit; it is kept for 5 years.");
    CHECK(said(R"({"kind":"text","text":"A bond is kept.","due":"2026-12-01"})") ==
          "A bond is kept, due by 2026-12-01.");
}

TEST_CASE("a condition that is still being written shows where words are missing", "[sentence]") {
    CHECK(said(R"({"kind":"quantity","value":null,"measure":"wet_t","window":{"kind":"rolling","n":3}})") ==
          "No more than … t wet in any 3 …, counted at release.");
    CHECK(said(R"({"kind":"duty"})") == "A … is due at ….");
}

TEST_CASE("docs/conditions.md says under each example how it reads", "[sentence]") {
    std::ifstream file(SPOILBOOK_SOURCE_DIR "/docs/conditions.md");
    std::string line;
    std::string example;
    int examples = 0;
    while (std::getline(file, line)) {
        if (line != "```json") continue;
        example.clear();
        while (std::getline(file, line) && line != "```")
            example += line;
        std::string reads;
        while (std::getline(file, line) && line.rfind("> ", 0) == 0)
            reads += (reads.empty() ? "" : " ") + line.substr(2);
        INFO(example);
        CHECK(condition_sentence(stored(json::parse(example))) == reads);
        ++examples;
    }
    CHECK(examples >= 7);
}
