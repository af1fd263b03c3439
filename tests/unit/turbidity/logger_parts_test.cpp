// SPDX-License-Identifier: GPL-3.0-or-later
// Times that stand in several columns, or as the day of a year: read where their heads or a number prove
// them, asked about otherwise. All numbers invented; days of a year COMP: date -u -d "2026-01-01 +92 days".
#include <catch2/catch.hpp>

#include "tests/support/logger_read.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

LoggerAnswers day_of_year(const char* column = "") {
    auto answers = zone("UTC");
    answers.dates = DateOrder::doy;
    answers.column = column;
    return answers;
}

const std::string two = "04-03T13:00=2.5000 04-03T13:15=3.5000 ";

}  // namespace

TEST_CASE("a year and the day of it make a date, with a time of day in any form beside them") {
    CHECK(read("Year,DOY,Time,Turb\n2026,93,13:00,2.5\n2026,93,13:15,3.5\n", zone("UTC")) == two);
    CHECK(read("Year;Julian day;HHMM;NTU\n2026;93;1300;2,5\n2026;93;1315;3,5\n", zone("UTC")) == two);
    CHECK(read("# made 2026-04-05\n# Year DOY hour min turb\n2026 093 13 00 2.5\n2026 093 13 15 3.5\n",
               zone("UTC")) == two);
    CHECK(read("# Date Time Depth Turb\n2026-04-03 13:00 9 2.5\n2026-04-03 13:15 9 3.5\n", zone("UTC")) ==
          two);
    CHECK(read("Year,Day of year,Turb\n2026,93.5,2.5\n2026,93.510417,3.5\n", zone("UTC")) ==
          "04-03T12:00=2.5000 04-03T12:15=3.5000 ");
    CHECK(read("Year,Day of year,Turb\n2026,93,2.5\n2026,94,3.5\n", zone("UTC")) ==
          "04-03T00:00=2.5000 04-04T00:00=3.5000 ");
    CHECK(assumes("Year,DOY,Time,Turb\n2026,93,13:00,2.5\n",
                  "dates are a year and the day of it, day 1 being 1 January"));
    CHECK(assumes("Year,DOY,Time,Turb\n2026,93,13:00,2.5\n",
                  "column 1 \"Year\" and column 2 \"DOY\" and column 3 \"Time\""));
}

TEST_CASE("the last day of a leap year and its 29 February are days, the 366th of a common year is refused") {
    CHECK(read("Year,DOY,Time,Turb\n2024,60,01:00,1\n2024,366,24:00,2\n", zone("UTC")) ==
          "02-29T01:00=1.0000 01-01T00:00=2.0000 ");
    CHECK(read("Year,DOY,Time,Turb\n2026,365,01:00,1\n2026,366,01:00,2\n2027,1,01:00,3\n", zone("UTC")) ==
          "12-31T01:00=1.0000 01-01T01:00=3.0000 1 refused");
}

TEST_CASE("a day beside a year that no month proves is asked about, and what is said of it holds") {
    const std::string text = "Year,Day,Time,Turb\n2026,12,13:00,2.5\n2026,12,13:15,3.5\n";
    CHECK(read(text, zone("UTC")) == "--dates ");
    CHECK(read(text, day_of_year()) == "01-12T13:00=2.5000 01-12T13:15=3.5000 ");
    CHECK(read("Year,Day,Time,Turb\n2026,93,13:00,2.5\n2026,93,13:15,3.5\n", zone("UTC")) == two);
    const auto before = guess_layout(HeldBytes(text), "f", "R1", day_of_year(), std::nullopt)->layout;
    CHECK(layout_from(layout_text(before)) == before);
    const auto again = guess_layout(HeldBytes(text), "f", "R1", {}, before);
    CHECK(again->questions.empty());
    CHECK(again->layout == before);
}

TEST_CASE("a data logger's arrays, which name nothing, are asked about and never taken in silence") {
    const std::string arrays =
        "101,2026,93,1300,12.6,2.5\n101,2026,93,1315,12.6,3.5\n101,2026,93,2400,12.5,4\n";
    CHECK(read(arrays, zone("UTC")).substr(0, 8) == "--dates ");
    CHECK(read(arrays, day_of_year()) == "--column ");
    CHECK(read(arrays, day_of_year("6")) == two + "04-04T00:00=4.0000 ");
    // Numbers that only look like it: the day goes back as often as on.
    CHECK(read("2026,93,2.5\n2026,12,2.5\n2026,99,2.5\n2026,3,2.5\n", day_of_year("3")) == "no-table");
}

TEST_CASE(
    "year, month, day, hour and minute in columns of their own are read, under one line of heads or two") {
    CHECK(read("Year,Month,Day,Hour,Minute,Turb\n2026,4,3,13,0,2.5\n2026,4,3,13,15,3.5\n", zone("UTC")) ==
          two);
    CHECK(read("#YY  MM DD hh mm TURB\n#yr  mo dy hr mn NTU\n2026 04 03 13 00 2.5\n2026 04 03 13 15 3.5\n",
               zone("UTC")) == two);
    CHECK(read("Site;Jahr;Monat;Tag;Zeit;FNU\nR1;2026;4;3;13:00;2,5\nR1;2026;4;3;13:15;3,5\n", zone("UTC")) ==
          two);
    CHECK(read("year,month,day,time,turb\n2026,2,28,13:00,1\n2026,2,29,13:00,2\n", zone("UTC")) ==
          "02-28T13:00=1.0000 1 refused");
    CHECK(read("Year,Month,Day,Hour,Minute,Turb\n2026,4,3,13,0,2.5\n") == "--zone ");
}

TEST_CASE("hours beside whole dates are times of day, and hours that were counted on are not") {
    CHECK(read("Date,Hour,NTU\n2026-04-03,12,2.5\n2026-04-03,13,3.5\n", zone("UTC")) ==
          "04-03T12:00=2.5000 04-03T13:00=3.5000 ");
    CHECK(read("Date,Hour,Min,NTU\n13/04/2026,13,0,2.5\n13/04/2026,13,15,3.5\n", zone("UTC")) ==
          "04-13T13:00=2.5000 04-13T13:15=3.5000 ");
    CHECK(read("Date,Hour,NTU\n2026-04-03,24,1\n2026-04-03,25,2\n", zone("UTC")) == "--table ");
}

TEST_CASE("a whole date beside its parts goes first, and dates in a preamble hide no parted ones") {
    CHECK(read("Time,Year,DOY,Turb\n2026-04-03 13:00,2026,93,2.5\n2026-04-03 13:15,2026,93,3.5\n",
               zone("UTC")) == two);
    CHECK(assumes("Time,Year,DOY,Turb\n2026-04-03 13:00,2026,93,2.5\n", "column 1 \"Time\""));
    CHECK(read("Made,2026-04-05\nBy,Ana\nYear,DOY,Time,Turb\n2026,93,13:00,2.5\n2026,93,13:15,3.5\n",
               zone("UTC")) == two);
}

TEST_CASE("the day of a year behind its year in one field is a date of its own") {
    CHECK(read("t,turb\n2026-093 13:00,2.5\n2026-093 13:15,3.5\n", zone("UTC")) == two);
    CHECK(read("t,turb\n2026-093T13:00Z,2.5\n2026-093T13:15Z,3.5\n") == two);
    CHECK(read("t,turb\n2024/366 13:00,2.5\n2025/366 13:00,3.5\n", zone("UTC")) ==
          "12-31T13:00=2.5000 1 refused");
}
