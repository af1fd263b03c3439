// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "tests/unit/folder/folder_support.h"

using namespace spoilbook;
using namespace spoilbook::test;
using Catch::Matchers::Contains;

namespace {

std::string refused_condition(const std::string& members, const std::string& of_consent = "") {
    TempFolder folder;
    write_marram(folder);
    folder.without("opening.csv");
    folder.with("consents.json", R"({"consents": [{"consent": "MHB-25-117", )" + of_consent +
                                     R"("conditions": [{"condition": "1", )" + members + "}]}]}");
    return all_lines(refusals_of(folder));
}

}  // namespace

TEST_CASE("the conditions of consent-rules' examples are read", "[folder]") {
    for (
        const char* members : {
            R"("kind":"quantity","applies":{"activity":"release","grounds":["Gannet Patch"]},"measure":"in_situ_m3",
                "op":"at_most","value":215000,"window":{"kind":"rolling","n":12,"unit":"months"},
                "warn_at":[0.8,0.95])",
            R"("kind":"quantity","measure":"in_situ_m3","op":"at_most","share_of_total":0.15,"of":240000,
                "each_of":"cell","window":{"kind":"term"})",
            R"("kind":"quantity","measure":"in_situ_m3","share_of_total":0.15,"of":{"floor":50000},
                "each_of":"cell","window":{"kind":"term"},"reserve":{"value":1000,"unlocked_by":"a letter"})",
            R"("kind":"place","inside":{"ground":"Gannet Patch"},"test":"whole_release","inset_m":20)",
            R"("kind":"place","outside":{"circle":{"lat":-40.61,"lon":179.6,"radius_m":200}},"test":"release_start")",
            R"("kind":"time","applies":{"activity":"release"},"mode":"forbid","dates":["09-01..10-15"],
                "hours":["20:00..06:00"])",
            R"("kind":"series","applies":{"activity":"release"},"variable":"wave_height_m",
                "statistic":{"kind":"instant"},"compare":{"absolute":1.8},"passes":{"at_once":true})",
            R"("kind":"series","variable":"turbidity","sites":["R1"],"control":"C1","statistic":{"kind":"median"},
                "over_minutes":360,"min_complete":0.75,"compare":{"above_control":10},"passes":{"held_hours":2},
                "tier":2,"clear":{"sites":"same","held_hours":6},
                "responses":[{"tier":2,"action":"slow","within":{"n":2,"unit":"hours"},"to":"authority"}])",
            R"("kind":"series","variable":"turbidity","compare":{"higher_of":[{"above_control":5},
                {"times_control":1.5}]},"while":{"working_plus":{"hours":3}},"passes":{"hours_in":{"hours":6,"days":30}})",
            R"("kind":"duty","what":"survey","when":{"every":{"measure":"in_situ_m3","value":50000}},
                "due":{"n":20,"unit":"working_days"})",
            R"("kind":"duty","what":"return","when":{"cycle":"month"},"due":{"n":10,"unit":"working_days"},
                "nil_required":true)",
            R"("kind":"watch","before_minutes":30,"radius_m":500,"for":["dolphins"],"clear_minutes":20,"log":true)",
            R"("kind":"record","required":{"trip":["lat","lon"]},"allowed":{"material_ground":{"sand":["Gannet Patch"]}},
                "retain_years":5)",
            R"("kind":"surface","ground":"Gannet Patch","no_rise_over_baseline_m":1,"tolerance_share":0.05)",
            R"("kind":"text","due":"2026-01-31","open_question":"in-situ or hopper?",
                "settled":{"by":"Ana","on":"2025-09-01","letter":"ML 12"})",
        }) {
        INFO(members);
        CHECK(refused_condition(members) == "");
    }
}

TEST_CASE("a member that a condition's kind has not is refused with the nearest name, nested ones too",
          "[folder]") {
    const std::string quantity =
        R"("kind":"quantity","measure":"in_situ_m3","value":1,"window":{"kind":"term"})";
    CHECK_THAT(refused_condition(quantity + R"(,"each_off":"cell")"),
               Contains("unknown-member | consents.json consents[0].conditions[0].each_off") &&
                   Contains("did you mean each_of?"));
    CHECK_THAT(refused_condition(quantity + R"(,"mode":"forbid")"), Contains("unknown-member"));
    CHECK_THAT(refused_condition(quantity + R"(,"applies":{"ground":["Gannet Patch"]})"),
               Contains("conditions[0].applies.ground") && Contains("did you mean grounds?"));
    CHECK_THAT(refused_condition(R"("kind":"quantity","measure":"in_situ_m3","value":1,
        "window":{"kind":"rolling","n":12,"units":"months"})"),
               Contains("conditions[0].window.units"));
    CHECK_THAT(refused_condition(R"("kind":"series","variable":"turbidity","compare":{"absolute":5},
        "responses":[{"action":"slow","within":{"n":2,"unit":"hours","after":"x"}}])"),
               Contains("conditions[0].responses[0].within.after"));
    CHECK_THAT(refused_condition(quantity + R"(,"wordings":"x")"), Contains("did you mean wording?"));
}

TEST_CASE("what a condition's kind needs must stand there", "[folder]") {
    CHECK_THAT(refused_condition(R"("text":"x")"), Contains("missing-member") && Contains("kind"));
    CHECK_THAT(refused_condition(R"("kind":"quantities")"), Contains("not-a-choice"));
    CHECK_THAT(refused_condition(R"("kind":"quantity","value":1,"window":{"kind":"term"})"),
               Contains("measure is missing"));
    CHECK_THAT(refused_condition(R"("kind":"quantity","measure":"trips","value":1)"),
               Contains("window is missing"));
    CHECK_THAT(refused_condition(R"("kind":"quantity","measure":"trips","window":{"kind":"term"})"),
               Contains("none of value, share_of_total"));
    CHECK_THAT(refused_condition(R"("kind":"place","test":"release_end")"),
               Contains("none of inside, outside"));
    CHECK_THAT(refused_condition(
                   R"("kind":"series","variable":"turbidity","compare":{"absolute":1,"above_control":2})"),
               Contains("more than one of"));
}

TEST_CASE("members of a condition have the right type, range and form", "[folder]") {
    CHECK_THAT(
        refused_condition(R"("kind":"quantity","measure":"trips","value":"6","window":{"kind":"term"})"),
        Contains("wrong-type") && Contains("conditions[0].value"));
    CHECK_THAT(
        refused_condition(R"("kind":"quantity","measure":"trips","value":-6,"window":{"kind":"term"})"),
        Contains("out-of-range") && Contains("conditions[0].value"));
    CHECK_THAT(
        refused_condition(R"("kind":"quantity","measure":"tripes","value":6,"window":{"kind":"term"})"),
        Contains("conditions[0].measure") && Contains("one of in_situ_m3"));
    CHECK_THAT(refused_condition(R"("kind":"time","mode":"forbid","dates":["09-31..10-15"])"),
               Contains("conditions[0].dates[0]"));
    CHECK_THAT(refused_condition(R"("kind":"time","mode":"forbid","hours":["20.00-06.00"])"),
               Contains("conditions[0].hours[0]"));
    CHECK_THAT(refused_condition(R"("kind":"time","mode":"forbid","hours":"20:00..06:00")"),
               Contains("conditions[0].hours"));
    CHECK_THAT(refused_condition(R"("kind":"duty","what":"return","when":{"cycle":"fortnight"})"),
               Contains("conditions[0].when.cycle"));
    CHECK_THAT(refused_condition(R"("kind":"text","from":"2026-02-01","to":"2026-01-01")"),
               Contains("backwards"));
    CHECK_THAT(refused_condition(R"("kind":"text")", R"("year_starts":"31-12",)"),
               Contains("consents[0].year_starts"));
    CHECK_THAT(refused_condition(R"("kind":"text")", R"("not_working":{"weekend":true,"yearly":["12-32"]},)"),
               Contains("not_working.weekend") && Contains("did you mean weekends?") &&
                   Contains("not_working.yearly[0]"));
}

TEST_CASE("a ground, claim or cell that a condition names must be there; a site is only noted", "[folder]") {
    CHECK_THAT(
        refused_condition(R"("kind":"place","inside":{"ground":"Gannet Pach"})"),
        Contains("unknown-reference") && Contains("inside.ground") && Contains("did you mean Gannet Patch?"));
    CHECK_THAT(refused_condition(R"("kind":"quantity","measure":"trips","value":6,"window":{"kind":"term"},
        "applies":{"claims":["FB1","FB2"]})"),
               Contains("applies.claims[1]"));
    TempFolder folder;
    write_marram(folder);
    folder.without("turbidity");
    CHECK(all_lines(refusals_of(folder)) == "");
    CHECK_THAT(all_lines(notes_of(folder)), Contains("sites[0]: \"R1\" is no site"));
    CHECK(notes_of(folder).size() == 2);
}
