// SPDX-License-Identifier: GPL-3.0-or-later
// Files as agencies, data loggers and spreadsheets write them: read right, asked about, or refused with what
// mends it; all numbers invented.
#include <catch2/catch.hpp>

#include "tests/support/logger_read.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

LoggerAnswers rows(const char* said) {
    LoggerAnswers answers;
    answers.rows = said;
    return answers;
}

LoggerAnswers dates(DateOrder order) {
    auto answers = zone("UTC");
    answers.dates = order;
    return answers;
}

}  // namespace

TEST_CASE("a year of two digits is told from a day by which number changes, or asked about") {
    CHECK(read("t;turb\n26-04-29 23:00;1\n26-04-30 01:00;2\n", zone("UTC")) ==
          "04-29T23:00=1.0000 04-30T01:00=2.0000 ");
    CHECK(read("t;turb\n29-04-26 23:00;1\n30-04-26 01:00;2\n", zone("UTC")) ==
          "04-29T23:00=1.0000 04-30T01:00=2.0000 ");
    const std::string one_day = "t;turb\n26/04/26 23:00;1\n26/04/26 23:15;2\n";
    CHECK(read(one_day, zone("UTC")) == "--dates ");
    CHECK(read("t;turb\n26/04/25 23:00;1\n26/04/25 23:15;2\n", zone("UTC")) == "--dates ");
    CHECK(read("t;turb\n26/04/25 23:00;1\n", dates(DateOrder::ymd)) == "04-25T23:00=1.0000 ");
    CHECK(read("t;turb\n26/04/25 23:00;1\n", dates(DateOrder::dmy)) == "04-26T23:00=1.0000 ");
    CHECK(read("t;turb\n4/13/26 23:00;1\n", zone("UTC")) == "04-13T23:00=1.0000 ");
}

TEST_CASE("what a person says of the dates is not overruled: rows that it cannot be are refused") {
    CHECK(read("t;turb\n13/04/2026 10:00;1\n12/04/2026 10:00;2\n", dates(DateOrder::mdy)) ==
          "12-04T10:00=2.0000 1 refused");
}

TEST_CASE("UTF-16 is known without a mark, whichever byte comes first") {
    const std::string text = "Time,Turb\n2026-04-03 01:00Z,2.5\n";
    std::string low_first, high_first;
    for (const char c : text) {
        low_first += {c, '\0'};
        high_first += {'\0', c};
    }
    CHECK(read(low_first) == "04-03T01:00=2.5000 ");
    CHECK(read(high_first) == "04-03T01:00=2.5000 ");
}

TEST_CASE("of several quantities, a row each, the rows of turbidity are read") {
    const std::string text =
        "Site,Time,Parameter,Value\nR1,2026-04-03 01:00Z,Turbidity,2.5\nR1,2026-04-03 01:00Z,Temperature,12\n"
        "C1,2026-04-03 01:00Z,Turbidity,1.5\nR1,2026-04-03 01:15Z,Turbidity,3.5\n";
    CHECK(read(text) == "04-03T01:00=2.5000 04-03T01:15=3.5000 ");
    const std::string codes =
        "Time,Parameter,Value\n2026-04-03 01:00Z,63680,2.5\n2026-04-03 01:00Z,00010,12\n";
    CHECK(read(codes) == "--rows ");
    CHECK(read(codes, rows("63680")) == "04-03T01:00=2.5000 ");
}

TEST_CASE("of a column a site the one that is named as the site is read") {
    CHECK(read("Time,C1,R1,R10\n2026-04-03 01:00Z,1,2.5,3\n") == "04-03T01:00=2.5000 ");
    CHECK(read("Time,C1 (NTU),R1 (NTU)\n2026-04-03 01:00Z,1,2.5\n") == "04-03T01:00=2.5000 ");
    CHECK(read("Time,C1 (NTU),R2 (NTU)\n2026-04-03 01:00Z,1,2.5\n") == "--column ");
}

TEST_CASE("numbers that no water has are asked about as codes") {
    for (const char* code : {"-7777", "-1.0E+30", "-99.5", "9.96921e+36"}) {
        CAPTURE(code);
        const auto text = std::string("t,turb\n2026-04-03 01:00Z,2.5\n2026-04-03 01:15Z,") + code + "\n";
        CHECK(read(text) == "--missing ");
        LoggerAnswers answers;
        answers.missing = {code};
        CHECK(read(text, answers) == "04-03T01:00=2.5000 04-03T01:15=- ");
    }
    CHECK(read("t;turb\n2026-04-03 01:00Z;2,5\n2026-04-03 01:15Z;-7777,0\n") == "--missing ");
    CHECK(read("t,turb\n2026-04-03 01:00Z,-0.4\n") == "04-03T01:00=-0.400 ");
}

TEST_CASE("times of day without a colon are read under a name that says so") {
    CHECK(read("Datum;Uhrzeit;FNU\n13.04.2026;0.15;1,5\n13.04.2026;13.45;2,5\n", zone("UTC")) ==
          "04-13T00:15=1.5000 04-13T13:45=2.5000 ");
    CHECK(read("Date,Time,FNU\n13/04/2026,0,1.5\n13/04/2026,1345,2.5\n", zone("UTC")) ==
          "04-13T00:00=1.5000 04-13T13:45=2.5000 ");
}

TEST_CASE("hours with hundredths, and hours that were counted, are no times of day") {
    // Whether .50 is half past or ten to, no row proves.
    CHECK(read("Date,Time,FNU\n13/04/2026,1.00,1\n13/04/2026,1.50,2\n13/04/2026,2.00,3\n", zone("UTC")) ==
          "--table ");
    CHECK(read("Date,Time,FNU\n13/04/2026,0.25,1\n13/04/2026,0.75,2\n", zone("UTC")) == "--table ");
    CHECK(read("Date,Time,FNU\n13/04/2026,0,1\n13/04/2026,15,2\n13/04/2026,30,2\n", zone("UTC")) ==
          "--table ");
}

TEST_CASE("several rows of one day without a time of day are no readings of midnight") {
    CHECK(read("Date,NTU\n2026-04-03,3\n2026-04-03,4\n2026-04-04,5\n", zone("UTC")) == "--table ");
    CHECK(read("Date,Site,NTU\n2026-04-03,R1,3\n2026-04-03,C1,4\n2026-04-04,R1,5\n", zone("UTC")) ==
          "04-03T00:00=3.0000 04-04T00:00=5.0000 ");
}

TEST_CASE("letters of a zone behind the times are shown with the question, and settle nothing") {
    const std::string text = "Time,Turb\n2026-04-03 13:00 NZST,2.5\n2026-04-03 13:15 NZST,3.5\n";
    const auto guess = guess_layout(HeldBytes(text), "f", "R1", {}, std::nullopt);
    REQUIRE(guess->questions.size() == 1);
    CHECK(guess->questions.front().text.find("Its times say NZST") != std::string::npos);
    CHECK(read(text, zone("+12:00")) == "04-03T01:00=2.5000 04-03T01:15=3.5000 ");
    const std::string two = "Time,Turb\n2026-04-03 13:00 NZDT,2.5\n2026-04-06 13:15 NZST,3.5\n";
    CHECK(read(two, zone("+12:00")) == "--zone ");
    CHECK(read(two, zone("Pacific/Auckland")) == "04-03T00:00=2.5000 04-06T01:15=3.5000 ");
}

TEST_CASE("a decimal comma in a file parted by commas does not lose what stands behind it in silence") {
    const std::string text = "Time,Turb\n2026-04-03 01:00Z,2,5\n2026-04-03 01:15Z,3,5\n";
    CHECK(read(text) == "--column ");
    // Row numbers without a head are told by the number of the column.
    LoggerAnswers answers;
    answers.column = "3";
    CHECK(read("Time,Turb\n1,2026-04-03 01:00Z,2.5\n2,2026-04-03 01:15Z,3.5\n", answers) ==
          "04-03T01:00=2.5000 04-03T01:15=3.5000 ");
    CHECK(read("Time;Turb\n2026-04-03 01:00Z;2.5;\n") == "04-03T01:00=2.5000 ");
}

TEST_CASE("heads that come again are passed over, and heads in another order stop the file") {
    const std::string first = "Time,Turb,Temp\n2026-04-03 01:00Z,2.5,12\n";
    CHECK(read(first + first.substr(0, 15) + "2026-04-03 01:15Z,3.5,12\n") ==
          "04-03T01:00=2.5000 04-03T01:15=3.5000 ");
    CHECK(read(first + "Time,Temp,Turb\n2026-04-03 01:15Z,12,3.5\n") == "--table ");
}

TEST_CASE("a foot of counts, checksums and remarks is left out") {
    CHECK(read("Time,Turb\n2026-04-03 01:00Z,2.5\n2026-04-03 01:15Z,3.5\n\nMin,2.5\nChecksum,0x77AF\nEND OF "
               "FILE,2 records\nDownloaded 2026-04-05 10:00\nRecords: 2\n") ==
          "04-03T01:00=2.5000 04-03T01:15=3.5000 ");
    // Half a row is no remark.
    CHECK(read("Time,Turb\n2026-04-03 01:00Z,2.5\n2026-04-0\n") == "04-03T01:00=2.5000 1 refused");
}

TEST_CASE("a data logger's heads of four lines, with names and units in quotes, are read as heads") {
    CHECK(read("\"FORMAT\",\"ST1\",\"7\"\n\"TIMESTAMP\",\"RECORD\",\"Turb_Avg\"\n\"TS\",\"RN\",\"NTU\"\n"
               "\"\",\"\",\"Avg\"\n\"2026-04-03 01:00:00\",0,2.5\n\"2026-04-03 01:15:00\",1,\"NAN\"\n",
               zone("UTC")) == "04-03T01:00=2.5000 04-03T01:15=- ");
}

TEST_CASE("a sheet that was not saved as text is refused by what it is") {
    const auto guess = guess_layout(HeldBytes(std::string("PK\x03\x04") + std::string(500, '\x11')), "a.xlsx",
                                    "R1", {}, std::nullopt);
    REQUIRE_FALSE(guess);
    CHECK(guess.refusals().front().what == "it is a spreadsheet or an archive, not text");
    CHECK(guess.refusals().front().mend == "save its sheet as CSV, and take that in");
}

TEST_CASE("which rows are of turbidity survives being written down") {
    LoggerLayout layout;
    layout.quantity_column = 2;
    layout.quantity_value = "Turbidity";
    CHECK(layout_from(layout_text(layout)) == layout);
}
