// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/load_figures.h"

#include <catch2/catch.hpp>

#include "model/volume/load_notes.h"
#include "tests/unit/volume/a_season.h"

using Catch::Matchers::WithinAbs;
using namespace spoilbook;
using namespace spoilbook::test;

namespace {

/// One load with every kind of reading.
ASeason all_readings() {
    ASeason a;
    a.lines = {{in_c1, 75}};
    a.load.dips_m = {1.35, 1.45};
    a.load.light_draughts_m = std::vector<double>(6, 1.0);
    a.load.full_draughts_m = std::vector<double>(6, 2.0);
    a.load.stated_in_situ_m3 = 210;
    return a;
}

std::vector<std::string> notes_of(const ASeason& a) {
    const Season season = a.made();
    Sources sources;
    const LoadIndex index(season, sources);
    const Load& load = season.loads.rows().front();
    std::vector<std::string> texts;
    for (const Note& note : load_notes(index, load, figures(index, load)))
        texts.push_back(note.where + ": " + note.what);
    return texts;
}

}  // namespace

TEST_CASE("every method that its readings allow stands beside the others", "[figures]") {
    const Worked w(all_readings());
    REQUIRE(w.figures.methods.size() == 4);
    CHECK(method_name(w.figures.methods[0].method) == "ullage");
    CHECK(method_name(w.figures.methods[1].method) == "draughts");
    CHECK(method_name(w.figures.methods[2].method) == "tally");
    CHECK(method_name(w.figures.methods[3].method) == "stated");
}

TEST_CASE("a consent's method counts, else ullage, draughts, tally, stated", "[figures]") {
    ASeason a = all_readings();
    CHECK(Worked(a).figures.counted_by(Method::tally)->method == Method::tally);
    CHECK(Worked(a).figures.counted_by()->method == Method::ullage);
    a.load.dips_m = {3.5};  // outside: ullage has none, and draughts without it weigh only
    CHECK(Worked(a).figures.counted_by()->method == Method::tally);
    CHECK(Worked(a).figures.counted_by({}, Measure::wet_t)->method == Method::draughts);
    CHECK(Worked(a).figures.counted_by(Method::ullage) == nullptr);
    CHECK(method_named("draughts") == Method::draughts);
    CHECK_FALSE(method_named("guess"));
}

TEST_CASE("a load that nobody measured is unknown, not zero", "[figures]") {
    const Worked w{ASeason{}};
    CHECK(w.figures.counted_by() == nullptr);
    REQUIRE(w.figures.parts.size() == 1);
    CHECK(w.figures.parts[0].claim.is_nil());
}

TEST_CASE("E_n is ISO 13528's for independent figures", "[figures]") {
    // By hand: |210 − 200| / √(8² + 6²) with U = 2u, u 4 and 3: 10/10
    CHECK_THAT(e_n({210, 4, {}}, {200, 3, {}}).value(), WithinAbs(1, 1e-12));
    CHECK_FALSE(e_n({210, 0, {}}, {200, 0, {}}));
}

TEST_CASE("what two figures share does not excuse their difference", "[figures]") {
    // Both hang on one bulking factor by 20 m³; only 4 and 3 are their own.
    CHECK_THAT(e_n({210, 4, {{1, 20}}}, {200, 3, {{1, 20}}}).value(), WithinAbs(1, 1e-12));
    CHECK_FALSE(e_n({210, 0, {{1, 20}}}, {200, 0, {{1, 20}}}));
}

TEST_CASE("methods that disagree are found and noted", "[figures]") {
    ASeason a = all_readings();
    CHECK(notes_of(a).empty());
    a.lines[0].count = 40;  // 144 m³ of hopper volume where the dips say 272
    const Worked w(a);
    bool found = false;
    for (const auto& pair : w.figures.agreements)
        found = found || (pair.a == Method::ullage && pair.b == Method::tally && pair.disagree());
    CHECK(found);
    REQUIRE_FALSE(notes_of(a).empty());
    CHECK(notes_of(a)[0].find("load L-1: ullage and tally disagree about in_situ_m3: E_n ") == 0);
}

TEST_CASE("dips typed in centimetres are noted", "[figures]") {
    ASeason a;
    a.load.dips_m = {14, 13.5};
    const auto notes = notes_of(a);
    REQUIRE(notes.size() == 2);
    CHECK(notes[0] == "load L-1: no figure by ullage: the mean dip is outside the barge's ullage table");
    CHECK(notes[1] == "load L-1: dips_m 14 m is beyond the barge's table: typed in centimetres?");
}

TEST_CASE("odd readings are noted and counted all the same", "[figures]") {
    ASeason a;
    a.load.material = id(sand);
    a.load.dips_m = {0.4, 2.2};
    CHECK(notes_of(a) == std::vector<std::string>{
                             "load L-1: dips from 0.4 to 2.2 m lie apart by over half of the ullage table"});
    CHECK(Worked(a).figures.counted_by() != nullptr);
    a.load.dips_m = {1.4};
    a.load.top_dips_m = {1.5};
    CHECK(notes_of(a) ==
          std::vector<std::string>{"load L-1: the water on the spoil reads lower than the spoil"});
}

TEST_CASE("a weight that the hopper cannot hold is noted", "[figures]") {
    ASeason a = all_readings();
    a.load.dips_m = {2.6, 2.6};  // 116 m³ that would weigh 460 t
    bool found = false;
    for (const auto& note : notes_of(a))
        found = found || note.find("weight and dips make 3.97 t/m³") != std::string::npos;
    CHECK(found);
}

TEST_CASE("a load over the barge's capacity is noted when it is surely over", "[figures]") {
    ASeason a;
    a.load.material = id(sand);
    a.load.stated_hopper_m3 = 421;
    REQUIRE(notes_of(a).size() == 1);
    CHECK(notes_of(a)[0] == "load L-1: 421 hopper m³ by stated is over Teal's capacity of 420 m³");
    a.load.stated_hopper_m3.reset();
    a.lines = {{in_c1, 120}};  // 432 ± 14.4
    CHECK(notes_of(a).empty());
}

TEST_CASE("the sum over a season is never surer than its bulking factor", "[figures]") {
    ASeason a = all_readings();
    Sources sources;
    const Season season = a.made();
    const LoadIndex index(season, sources);
    const auto figure = figures(index, season.loads.rows().front());
    Total total;
    for (int i = 0; i < 600; ++i)
        total.add(*figure.by(Method::ullage)->in_situ_m3);
    // 0.05/1.25 is 4 % of the bulk, whatever the number of loads; dips add 0.1 % to that at most.
    CHECK(total.estimate().u() / total.value() >= 0.04);
    CHECK(total.estimate().u() / total.value() < 0.0401);
}
