// SPDX-License-Identifier: GPL-3.0-or-later
// What stands beside a box of the barge ticket. The season of a_season.h: ullage table 0 to 3 m, draughts 0.5
// to 4 m, capacity 420 m³.
#include "model/volume/reading_findings.h"

#include <catch2/catch.hpp>

#include "tests/unit/volume/a_season.h"

using namespace spoilbook;
using namespace spoilbook::test;

namespace {

std::vector<ReadingFinding> findings(const ASeason& a) {
    const Season season = a.made();
    Sources sources;
    const LoadIndex index(season, sources);
    return reading_findings(index, season.loads.rows().front(), figures(index, season.loads.rows().front()));
}

/// The only finding of a load.
ReadingFinding only(const ASeason& a) {
    const auto found = findings(a);
    REQUIRE(found.size() == 1);
    return found.front();
}

}  // namespace

TEST_CASE("readings as they should be have no finding", "[readings]") {
    ASeason a;
    a.load.dips_m = {0.4, 0.5};
    a.load.light_draughts_m = {1, 1, 1.1, 1.1, 1.2, 1.2};
    a.load.full_draughts_m = {2.5, 2.5, 2.6, 2.6, 2.7, 2.7};
    CHECK(findings(a).empty());
}

TEST_CASE("a dip below the table and one typed in centimetres are told apart", "[readings]") {
    ASeason a;
    a.load.dips_m = {3.4, 3.6};
    CHECK(only(a).what == Oddity::outside_table);
    CHECK_THAT(only(a).reading, Catch::Matchers::WithinAbs(3.5, 1e-9));
    a.load.dips_m = {38, 40};
    CHECK(only(a).what == Oddity::centimetres);
    CHECK_THAT(only(a).reading, Catch::Matchers::WithinAbs(38, 1e-9));
    CHECK_THAT(only(a).high, Catch::Matchers::WithinAbs(3, 1e-9));
}

TEST_CASE("a draught typed in centimetres is named by its column", "[readings]") {
    ASeason a;
    a.load.light_draughts_m = {1, 1, 1, 1, 1, 1};
    a.load.full_draughts_m = {2.5, 2.5, 2.6, 260, 2.7, 2.7};
    const auto finding = only(a);
    CHECK(finding.column == "full_draughts_m");
    CHECK(finding.what == Oddity::centimetres);
}

TEST_CASE("marks that are neither four nor six are missing", "[readings]") {
    ASeason a;
    a.load.light_draughts_m = {1, 1, 1, 1, 1, 1};
    a.load.full_draughts_m = {2.5, 2.5, 2.6, 2.7, 2.7};
    CHECK(only(a).what == Oddity::marks_missing);
}

TEST_CASE("a barge that reads heavier light than loaded says so at both readings", "[readings]") {
    ASeason a;
    a.load.light_draughts_m = {3, 3, 3, 3, 3, 3};
    a.load.full_draughts_m = {1, 1, 1, 1, 1, 1};
    const auto found = findings(a);
    REQUIRE(found.size() == 2);
    CHECK(found[0].what == Oddity::light_heavier);
    CHECK(found[1].what == Oddity::light_heavier);
}

TEST_CASE("loaded draughts wait for light ones, and light ones for loaded", "[readings]") {
    ASeason a;
    a.load.full_draughts_m = {2, 2, 2, 2};
    CHECK(only(a).what == Oddity::no_light);
    a.load.full_draughts_m.clear();
    a.load.light_draughts_m = {1, 1, 1, 1};
    CHECK(only(a).what == Oddity::no_full);
}

TEST_CASE("water on the spoil cannot read lower than the spoil", "[readings]") {
    ASeason a;
    a.load.dips_m = {0.5, 0.5};
    a.load.top_dips_m = {0.9, 0.9};
    CHECK(only(a).column == "top_dips_m");
    CHECK(only(a).what == Oddity::water_below_spoil);
}

TEST_CASE("dips of a barge without a table give no volume", "[readings]") {
    ASeason a;
    a.barge.ullage_table.clear();
    a.load.dips_m = {0.5, 0.5};
    CHECK(only(a).what == Oddity::no_table);
}

TEST_CASE("more left in the hopper than the load holds is told beside what was left", "[readings]") {
    ASeason a;
    a.load.dips_m = {2.9, 2.9};
    a.load.left_before_m3 = 200;
    const auto finding = only(a);
    CHECK(finding.column == "left_before_m3");
    CHECK(finding.what == Oddity::left_over);
}
