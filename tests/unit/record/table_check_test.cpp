// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/table_check.h"

#include <catch2/catch.hpp>

using namespace spoilbook;

namespace {

std::size_t count(const TableFindings& found, TableGrade grade) {
    std::size_t n = 0;
    for (const TableFinding& one : found)
        n += one.grade == grade ? 1 : 0;
    return n;
}

}  // namespace

TEST_CASE("a sound ullage table passes in either order, and no table is no trouble", "[table_check]") {
    for (const Table& table :
         {Table{{0, 420}, {1, 320}, {3, 60}}, Table{{3, 60}, {1, 320}, {0, 420}}, Table{}}) {
        CHECK(check_ullage_table(table, 420).empty());
    }
}

TEST_CASE("an ullage table that cannot be right is told with its row", "[table_check]") {
    struct Bad {
        Table table;
        TableGrade grade;
        std::optional<std::size_t> row;
        std::string says;
    };
    const std::vector<Bad> bad{
        {{{0, 420}}, TableGrade::disordered, {}, "fewer than two rows"},
        {{{0, 420}, {1}}, TableGrade::impossible, 1, "a row of 1 numbers"},
        {{{0, 420}, {1, 320}, {1, 300}}, TableGrade::disordered, 2, "repeats 1 m"},
        {{{0, 420}, {2, 200}, {1, 320}}, TableGrade::disordered, 2, "at 1 m is out of order"},
        {{{0, 420}, {1, 430}}, TableGrade::disordered, 1, "430 m³ does not fall as the ullage grows"},
        {{{-1, 420}, {1, 320}}, TableGrade::impossible, 0, "-1 is outside the range of ullage"},
        {{{0, 420}, {61, 320}}, TableGrade::impossible, 1, "61 is outside the range of ullage"},
    };
    for (const auto& [table, grade, row, says] : bad) {
        const auto found = check_ullage_table(table, 420);
        CAPTURE(says);
        REQUIRE_FALSE(found.empty());
        CHECK(found.front().grade == grade);
        CHECK(found.front().row == row);
        CHECK(found.front().what == says);
    }
}

TEST_CASE("an ullage table in centimetres, or far from the capacity, is odd", "[table_check]") {
    CHECK(count(check_ullage_table({{0, 420}, {20, 320}, {30, 60}}, 420), TableGrade::odd) == 1);
    CHECK(count(check_ullage_table({{0, 300}, {1, 200}}, 420), TableGrade::odd) == 1);
}

TEST_CASE("a hydrostatic table must grow with the draught, and crossed with the ullage table it does not",
          "[table_check]") {
    CHECK(check_hydrostatic_table({{1, 420}, {2, 880}}, 50).empty());
    CHECK(check_hydrostatic_table({{2, 880}, {1, 420}}, 50).empty());
    CHECK(check_hydrostatic_table({{1, 420}, {2, 400}}, 50).front().grade == TableGrade::disordered);
    CHECK(check_hydrostatic_table({{1, 420}, {2, 880, 4.6}}, 50).front().grade == TableGrade::disordered);
    CHECK(check_ullage_table({{1, 420}, {2, 880}}, {}).front().grade == TableGrade::disordered);
}

TEST_CASE("TPC that the displacements deny and an LCF off the hull are odd", "[table_check]") {
    CHECK(check_hydrostatic_table({{1, 420, 4.5, 0.3}, {2, 880, 4.7, 0.2}}, 50).empty());
    CHECK(check_hydrostatic_table({{1, 420, 45, 0.3}, {2, 880, 47, 0.2}}, 50).size() == 1);
    // LCF counted from the after perpendicular instead of midships
    CHECK(check_hydrostatic_table({{1, 420, 4.5, 25.3}, {2, 880, 4.7, 25.2}}, 50).size() == 2);
}

TEST_CASE("a reach table runs one way, and its reach may rise and fall", "[table_check]") {
    CHECK(check_reach_table({{-2, 12}, {0, 15}, {8, 11}}).empty());
    CHECK(check_reach_table({{0, 15}, {8, 11}, {4, 13}}).front().grade == TableGrade::disordered);
    CHECK(check_table("capacity_m3", {{0, 15}}).empty());
}
