// SPDX-License-Identifier: GPL-3.0-or-later
// Odd files: each is read right, or asked about; all numbers invented.
#include <catch2/catch.hpp>

#include "tests/support/logger_read.h"

using namespace spoilbook;
using namespace spoilbook::tests;

TEST_CASE("dates in a preamble longer than the readings do not make a table") {
    std::string text;
    for (int i = 1; i <= 28; ++i)
        text += "Setting " + std::to_string(i) + ": value, 7, 2026-01-0" + std::to_string(i % 9 + 1) + "\n";
    text +=
        "\nDate/Time (UTC+12:00),Turb NTU,Batt V\n2026-04-03 13:00:00,2.5,12.1\n"
        "2026-04-03 13:15:00,3.5,12.1\n2026-04-03 13:30:00,4.5,12\n2026-04-03 13:45:00,5.5,12\n"
        "2026-04-03 14:00:00,5.5,12\n2026-04-03 14:15:00,5.5,12\n2026-04-03 14:30:00,5.5,12\n"
        "2026-04-03 14:45:00,5.5,12\n";
    CHECK(read(text).substr(0, 37) == "04-03T01:00=2.5000 04-03T01:15=3.5000");
}

TEST_CASE("days under a preamble with one time of day are still days, and said to be") {
    const std::string text =
        "Made 2026-04-05 09:00:00, by hand\nDate,Turb\n2026-04-03,2.5\n2026-04-04,3.5\n2026-04-05,3\n"
        "2026-04-06,3\n2026-04-07,3\n";
    CHECK(read(text, zone("UTC")).substr(0, 37) == "04-03T00:00=2.5000 04-04T00:00=3.5000");
    CHECK(assumes(text, "each is taken at midnight"));
}

TEST_CASE("a quoted field keeps its line breaks, and a lone quote swallows nothing") {
    CHECK(read("\"Time\",\"Remark\",\"Turbidity\n(NTU)\"\n\"2026-04-03 01:00Z\",\"lens "
               "\"\"A\"\",\nwiped\",\"2.5\"\n"
               "\"2026-04-03 01:15Z\",\"\",\"3.5\"\n") == "04-03T01:00=2.5000 04-03T01:15=3.5000 ");
    CHECK(read("Time,Turb,Note\n2026-04-03 01:00Z,2.5,\"open\n2026-04-03 01:15Z,3.5,x\n") ==
          "04-03T01:00=2.5000 04-03T01:15=3.5000 ");
}

TEST_CASE(
    "a twelve-hour clock is read with dots, a hard blank, parted by blanks, or with its half in a column") {
    const std::string afternoon = "04-13T13:00=2.5000 ";
    CHECK(read("Time\tTurb\n13/04/2026 01:00:00 p.m.\t2.5\n", zone("UTC")) == afternoon);
    CHECK(read("Time,NTU\n4/13/26 1:00:00\xE2\x80\xAFPM,2.5\n", zone("UTC")) == afternoon);
    CHECK(read("4/13/26 1:00 PM  2.5\n", zone("UTC")) == afternoon);
    CHECK(read("Time,NTU\n4/13/26 12:15:00 AM,2.5\n", zone("UTC")) == "04-13T00:15=2.5000 ");
    CHECK(read("Date,Time,Half,Turb\n4/13/26,1:00,PM,2.5\n", zone("UTC")) == afternoon);
    CHECK(read("Time,Turb,AM/PM\n4/13/26 12:15,1.5,a.m.\n4/13/26 12:15,2.5,p.m.\n4/13/26 13:15,3,p.m.\n",
               zone("UTC")) == "04-13T00:15=1.5000 04-13T12:15=2.5000 1 refused");
}

TEST_CASE("times that are one number are asked about unless their column says how they count") {
    // 2026-04-03T01:00Z is 1 775 178 000 s after 1970 (COMP: date -u -d @1775178000); 2023-01-01 is day
    // 44927.
    CHECK(read("epoch,Turb\n1775178000,4\n1775178900,3\n") == "04-03T01:00=4.0000 04-03T01:15=3.0000 ");
    const std::string plain = "time;turb\n1775178000000;4,5\n1775178900000;3,5\n";
    CHECK(read(plain) == "--dates ");
    LoggerAnswers answers;
    answers.dates = DateOrder::unix_ms;
    CHECK(read(plain, answers) == "04-03T01:00=4.5000 04-03T01:15=3.5000 ");
    const std::string sheet = "Time,Turb\n44927.5,4\n44927.510416667,3\n44927.52083,3.5\n";
    CHECK(read(sheet, zone("+12:00")) == "--dates ");
    answers = zone("+12:00");
    answers.dates = DateOrder::excel;
    CHECK(read(sheet, answers) == "01-01T00:00=4.0000 01-01T00:15=3.0000 01-01T00:30=3.5000 ");
    CHECK(read("n,mV,Turb\n1,44927,2\n2,44920,3\n3,44933,2\n4,44931,2\n") == "no-table");
}

TEST_CASE("thousands are read where both marks stand, or once the decimal mark is said") {
    CHECK(read("t;turb\n2026-04-03 01:00Z;2,5\n2026-04-03 01:15Z;1.234,5\n") ==
          "04-03T01:00=2.5000 04-03T01:15=1234.5 ");
    const std::string open = "t,turb\n2026-04-03 01:00Z,\"1,234\"\n2026-04-03 01:15Z,12\n";
    CHECK(read(open) == "--decimal ");
    LoggerAnswers answers;
    answers.decimal = '.';
    CHECK(read(open, answers) == "04-03T01:00=1234.0 04-03T01:15=12.000 ");
    CHECK(read("t;turb\n2026-04-03 01:00Z;2,5\n2026-04-03 01:15Z;1.23,5\n") == "--missing ");
}

TEST_CASE("of two columns of times the one in UTC is read, and its zone goes for no other") {
    CHECK(read("Local,Time UTC,Turb\n2026-04-03 14:00,2026-04-03 01:00,2.5\n") == "04-03T01:00=2.5000 ");
    CHECK(read("Time,Sent UTC offset h,Turb\n2026-04-03 14:00,13,2.5\n") == "--zone ");
}

TEST_CASE("a column of zones settles the zone where it says one, and asks where it says several") {
    CHECK(read("Date,Time,TZ,Turb\n2026-04-03,13:00,+12:00,2.5\n") == "04-03T01:00=2.5000 ");
    const std::string two = "time\ttz_cd\tTurb\n2026-03-08 01:00\tEST\t2.5\n2026-03-08 03:00\tEDT\t2.6\n";
    CHECK(read(two) == "--zone ");
    CHECK(read(two, zone("-05:00")) == "--zone ");
    CHECK(read(two, zone("America/New_York")) == "03-08T06:00=2.5000 03-08T07:00=2.6000 ");
}

TEST_CASE("local times over the end of daylight saving are refused row by row, not guessed") {
    const std::string text =
        "Local,Turb\n2026-04-05 01:30,1\n2026-04-05 02:30,3\n2026-04-05 02:30,5\n2026-04-05 03:00,6\n";
    CHECK(read(text, zone("Pacific/Auckland")) == "04-04T12:30=1.0000 04-04T15:00=6.0000 2 refused");
}

TEST_CASE("a named column of turbidity is read though most of its rows hold codes") {
    CHECK(read("t,Turb\n2026-04-03 01:00Z,-9999\n2026-04-03 01:15Z,NaN\n2026-04-03 01:30Z,#N/A\n"
               "2026-04-03 01:45Z,\n2026-04-03 02:00Z,4.5\n") ==
          "04-03T01:00=- 04-03T01:15=- 04-03T01:30=- 04-03T01:45=- 04-03T02:00=4.5000 ");
    CHECK(read("t,Turb\n2026-04-03 01:00Z,****\n2026-04-03 01:15Z,< 0.1\n2026-04-03 02:00Z,4.5\n") ==
          "--missing ");
}

TEST_CASE("carriage returns alone end lines, and months may be German words") {
    CHECK(read("t,turb\r2026-04-03 01:00Z,2.5\r2026-04-03 01:15Z,3.5\r") ==
          "04-03T01:00=2.5000 04-03T01:15=3.5000 ");
    CHECK(read("Zeit;FNU\n03-Okt-2026 01:00;2,5\n4. Dez 2026 01:15;3,5\n", zone("UTC")) ==
          "10-03T01:00=2.5000 12-04T01:15=3.5000 ");
}

TEST_CASE("a month's name may stand before the day") {
    CHECK(read("when,FNU\n\"Apr 3, 2026 1:00 PM\",2.5\nMay 13 2026 14:00,3.5\n", zone("UTC")) ==
          "04-03T13:00=2.5000 05-13T14:00=3.5000 ");
}

TEST_CASE("rows are told apart by any column, once it is said what stands in them") {
    LoggerAnswers answers;
    answers.rows = "mid";
    CHECK(read("t,depth,turb\n2026-04-03 01:00Z,top,1.5\n2026-04-03 01:00Z,mid,2.5\n", answers) ==
          "04-03T01:00=2.5000 ");
}

TEST_CASE("what others say of a value's quality is named and left") {
    CHECK(assumes("t,Turb,F_Turb\n2026-04-03 01:00Z,2.5,<0>\n2026-04-03 01:15Z,642,<-3>\n",
                  "column 3 \"F_Turb\" is not read"));
}
