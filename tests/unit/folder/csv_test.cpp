// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "model/folder/csv_reader.h"
#include "model/folder/csv_writer.h"
#include "model/folder/nearest.h"
#include "model/folder/utf8.h"
#include "tests/unit/folder/folder_support.h"

using namespace spoilbook;
using namespace spoilbook::test;
using Catch::Matchers::Contains;

namespace {

struct Table {
    std::vector<CsvRow> rows;
    std::string refused;
};

Table table_in(const std::string& bytes) {
    Table table;
    Complaints complaints;
    read_csv(
        bytes, "trips.csv", [&](const CsvRow& row) { table.rows.push_back(row); }, complaints);
    table.refused = all_lines(complaints.refusals());
    return table;
}

}  // namespace

TEST_CASE("a byte order mark, CR LF and blank lines change nothing in a table", "[folder]") {
    const auto table = table_in("\xEF\xBB\xBFtrip,remarks\r\n\r\nT-1,calm\r\n   \r\nT-2,\r\n");
    CHECK(table.refused == "");
    REQUIRE(table.rows.size() == 3);
    CHECK(table.rows[0].fields == std::vector<std::string>{"trip", "remarks"});
    CHECK(table.rows[1].fields == std::vector<std::string>{"T-1", "calm"});
    CHECK(table.rows[1].line == 3);
    CHECK(table.rows[2].line == 5);
}

TEST_CASE("a quoted remark may hold commas, quotes and lines, and its row keeps the line it starts on",
          "[folder]") {
    const auto table = table_in("trip,remarks\nT-1,\"said \"\"go\"\",\nthen\r\nwent\"\nT-2,x\n");
    CHECK(table.refused == "");
    REQUIRE(table.rows.size() == 3);
    CHECK(table.rows[1].fields[1] == "said \"go\",\nthen\r\nwent");
    CHECK(table.rows[1].line == 2);
    CHECK(table.rows[2].line == 5);
}

TEST_CASE("a table at fault is refused with its line", "[folder]") {
    CHECK_THAT(table_in("trip,remarks\nT-1\n").refused, Contains("ragged-row | trips.csv line 2: 1 fields"));
    CHECK_THAT(table_in("trip,remarks\nT-1,a,b\n").refused, Contains("trips.csv line 2: 3 fields"));
    CHECK_THAT(table_in("trip,remarks\nT-1,\"open\nT-2,b\n").refused, Contains("quoting | trips.csv line 2"));
    CHECK_THAT(table_in("trip,remarks\nT-1,so \"it\" was\n").refused, Contains("quoting | trips.csv line 2"));
    CHECK_THAT(table_in("trip,remarks\nT-1,\"a\"b\n").refused, Contains("quoting | trips.csv line 2"));
    CHECK_THAT(table_in("trip,remarks\rT-1,a\r").refused, Contains("line-end | trips.csv line 1 column 13"));
    CHECK_THAT(table_in("").refused, Contains("empty-file"));
    CHECK_THAT(table_in("trip,remarks\nT-1,\x80\n").refused,
               Contains("not-utf-8 | trips.csv line 2 column 5"));
    CHECK_THAT(table_in("trip,remarks\nT-1," + std::string(1, '\0') + "\n").refused,
               Contains("nul-byte | trips.csv line 2 column 5"));
    CHECK_THAT(table_in("trip,remarks\nT-1," + std::string(longest_field_bytes + 1, 'x') + "\n").refused,
               Contains("too-long | trips.csv line 2"));
}

TEST_CASE("a ragged row does not hide the faults behind it", "[folder]") {
    const auto table = table_in("trip,remarks\nT-1\nT-2,x\nT-3\n");
    CHECK_THAT(table.refused, Contains("line 2") && Contains("line 4"));
    CHECK(table.rows.size() == 2);
}

TEST_CASE("what is written as CSV is read back as it was", "[folder]") {
    const std::vector<std::string> fields{"=1+1",           "-5", "a,b", "\"", "two\nlines",
                                          "with\r\nreturn", "",   "@x",  "mā"};
    std::string text;
    append_csv_row(text, fields);
    CHECK(text == "=1+1,-5,\"a,b\",\"\"\"\",\"two\nlines\",\"with\r\nreturn\",,@x,mā\n");
    const auto table = table_in(text);
    REQUIRE(table.rows.size() == 1);
    CHECK(table.rows[0].fields == fields);
}

TEST_CASE("UTF-8 is told from what only looks like it", "[folder]") {
    const auto bad = [](const std::string& bytes) { return why_not_text(bytes, "f").has_value(); };
    CHECK_FALSE(bad("Kaikōura Ø 海 🐋"));
    CHECK(bad("\xC0\xAF"));          // overlong
    CHECK(bad("\xE0\x80\xAF"));      // overlong
    CHECK(bad("\xED\xA0\x80"));      // surrogate
    CHECK(bad("\xF4\x90\x80\x80"));  // beyond U+10FFFF
    CHECK(bad("\xE2\x82"));          // cut short
    CHECK(bad("abcdefgh\xFF"));
    CHECK(why_not_text("ā\nxē\xFF", "f")->where == "f line 2 column 3");
}

TEST_CASE("a slip of the pen is told the nearest name", "[folder]") {
    const std::vector<std::string> known{"trip",          "load",        "departed",
                                         "release_start", "release_end", "wave_height_m"};
    CHECK(did_you_mean("relase_start", known) == "did you mean release_start?");
    CHECK(did_you_mean("laod", known) == "did you mean load?");
    CHECK(did_you_mean("wave_height", known) == "did you mean wave_height_m?");
    CHECK_THAT(did_you_mean("colour", known), Contains("it may be trip, load"));
    CHECK(edit_distance("Trip", "trip", 3) == 0);
    CHECK(edit_distance("kitten", "sitting", 5) == 3);  // MEM: the textbook pair
}
