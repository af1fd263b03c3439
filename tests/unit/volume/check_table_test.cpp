// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/check_table.h"

#include <catch2/catch.hpp>

using namespace spoilbook;

namespace {

Barge with_ullage(Table table) {
    Barge barge;
    barge.capacity_m3 = 420;
    barge.ullage_table = std::move(table);
    return barge;
}

Barge with_hydrostatics(Table table) {
    Barge barge;
    barge.lbp_m = 50;
    barge.hydrostatic_table = std::move(table);
    return barge;
}

}  // namespace

TEST_CASE("a sound ullage table passes in either order, and no table is no trouble", "[check_table]") {
    for (const Table& table :
         {Table{{0, 420}, {1, 320}, {3, 60}}, Table{{3, 60}, {1, 320}, {0, 420}}, Table{}}) {
        const auto found = check_ullage_table(with_ullage(table), "plant.json");
        CHECK(found.refusals.empty());
        CHECK(found.notes.empty());
    }
}

TEST_CASE("an ullage table that cannot be right is refused with its row", "[check_table]") {
    struct Bad {
        Table table;
        std::string says;
    };
    const std::vector<Bad> bad{
        {{{0, 420}}, "fewer than two rows"},
        {{{0, 420}, {1}}, "row 2 has 1 numbers"},
        {{{0, 420}, {1, 320}, {1, 300}}, "row 3 repeats 1 m"},
        {{{0, 420}, {2, 200}, {1, 320}}, "row 3 at 1 m is out of order"},
        {{{0, 420}, {1, 430}}, "row 2: 430 does not fall as the ullage grows"},
        {{{-1, 420}, {1, 320}}, "row 1 has a number below zero"},
    };
    for (const auto& [table, says] : bad) {
        const auto found = check_ullage_table(with_ullage(table), "plant.json barges[0]");
        CAPTURE(says);
        REQUIRE_FALSE(found.refusals.empty());
        CHECK(found.refusals.front().what.find(says) != std::string::npos);
        CHECK(found.refusals.front().where == "plant.json barges[0]");
    }
}

TEST_CASE("an ullage table in centimetres, or far from the capacity, is noted", "[check_table]") {
    CHECK(check_ullage_table(with_ullage({{0, 420}, {100, 320}, {300, 60}}), "x").notes.size() == 1);
    CHECK(check_ullage_table(with_ullage({{0, 300}, {1, 200}}), "x").notes.size() == 1);
}

TEST_CASE("a hydrostatic table must grow with the draught", "[check_table]") {
    CHECK(check_hydrostatic_table(with_hydrostatics({{1, 420}, {2, 880}}), "x").refusals.empty());
    CHECK(check_hydrostatic_table(with_hydrostatics({{2, 880}, {1, 420}}), "x").refusals.empty());
    CHECK(check_hydrostatic_table(with_hydrostatics({{1, 420}, {2, 400}}), "x").refusals.size() == 1);
    CHECK(check_hydrostatic_table(with_hydrostatics({{1, 420}, {2, 880, 4.6}}), "x").refusals.size() == 1);
}

TEST_CASE("TPC that the displacements deny and an LCF off the hull are noted", "[check_table]") {
    CHECK(check_hydrostatic_table(with_hydrostatics({{1, 420, 4.5, 0.3}, {2, 880, 4.7, 0.2}}), "x")
              .notes.empty());
    CHECK(check_hydrostatic_table(with_hydrostatics({{1, 420, 45, 0.3}, {2, 880, 47, 0.2}}), "x")
              .notes.size() == 1);
    // LCF counted from the after perpendicular instead of midships
    CHECK(check_hydrostatic_table(with_hydrostatics({{1, 420, 4.5, 25.3}, {2, 880, 4.7, 25.2}}), "x")
              .notes.size() == 2);
}
