// SPDX-License-Identifier: GPL-3.0-or-later
// Shapes of files that agencies and loggers write; all numbers invented.
#include "model/turbidity/logger_guess.h"

#include <catch2/catch.hpp>

#include "model/turbidity/logger_rows.h"
#include "model/unit/time_text.h"

using namespace spoilbook;

namespace {

LoggerGuess guess(const std::string& text, const LoggerAnswers& answers = {},
                  const std::optional<LoggerLayout>& before = std::nullopt) {
    return *guess_layout(HeldBytes(text), "logger.txt", "R1", answers, before);
}

std::vector<std::string> asked(const LoggerGuess& of) {
    std::vector<std::string> about;
    for (const auto& question : of.questions)
        about.push_back(question.about);
    return about;
}

LoggerAnswers zone(const char* name) {
    LoggerAnswers answers;
    answers.zone = name;
    return answers;
}

/// time=value of each reading, in UTC; a missing value is a dash.
std::string read(const std::string& text, const LoggerAnswers& answers) {
    const auto found = guess(text, answers);
    INFO((found.questions.empty() ? "" : found.questions.front().text));
    REQUIRE(found.questions.empty());
    std::string said;
    const auto rows = read_logger_rows(HeldBytes(text), found.layout, "logger.txt", [&](const auto& reading) {
        said += instant_text(reading.time, Zone::utc()) + "=" +
                (reading.value ? std::to_string(*reading.value).substr(0, 4) : "-") + " ";
    });
    CHECK(rows.refused == 0);
    return said;
}

using Asked = std::vector<std::string>;

}  // namespace

TEST_CASE("semicolons, a decimal comma and a German date are read where they prove themselves") {
    const std::string text =
        "Gerät: 12\r\nSeriennummer;4711\r\n\r\nDatum;Zeit;Trübung\r\n;;FNU\r\n"
        "27.09.2025;13:50:00;2,25\r\n27.09.2025;14:00:00;12,5\r\n";
    CHECK(asked(guess(text)) == Asked{"zone"});
    CHECK(read(text, zone("+02:00")) == "2025-09-27T11:50:00Z=2.25 2025-09-27T12:00:00Z=12.5 ");
}

TEST_CASE("whether the day or the month comes first is asked where no date proves it") {
    const std::string text = "time,turbidity\n3/4/2025 1:00 PM,5.0\n3/4/2025 1:15 PM,6.0\n";
    auto answers = zone("UTC");
    CHECK(asked(guess(text, answers)) == Asked{"dates"});
    answers.dates = DateOrder::mdy;
    CHECK(read(text, answers) == "2025-03-04T13:00:00Z=5.00 2025-03-04T13:15:00Z=6.00 ");
    answers.dates = DateOrder::dmy;
    CHECK(read(text, answers).substr(0, 10) == "2025-04-03");
}

TEST_CASE("a zone is taken from the times or the header where they state it, and asked otherwise") {
    CHECK(read("t,v\n2025-04-03T13:00+12:00,5.0\n2025-04-03T13:10+12:00,6.0\n", {}) ==
          "2025-04-03T01:00:00Z=5.00 2025-04-03T01:10:00Z=6.00 ");
    CHECK(read("Date Time (GMT+12:00),Turb\n2025-04-03 13:00:00,5.0\n", {}) == "2025-04-03T01:00:00Z=5.00 ");
    CHECK(asked(guess("t,v\n2025-04-03 13:00,5.0\n")) == Asked{"zone"});
    CHECK(asked(guess("t,v\n2025-04-03 13:00,5.0\n", zone("Nowhere/Town"))) == Asked{"zone"});
}

TEST_CASE("an hour that the zone has twice is refused, and read with the logger's own offset") {
    const std::string text = "t,v\n2026-04-05 02:30,5.0\n";
    const auto found = guess(text, zone("Pacific/Auckland"));
    const auto rows = read_logger_rows(HeldBytes(text), found.layout, "logger.txt");
    REQUIRE(rows.refused == 1);
    CHECK(rows.refusals.front().where == "logger.txt line 2 column time");
    CHECK(read(text, zone("+12:00")) == "2026-04-04T14:30:00Z=5.00 ");
}

TEST_CASE("codes for a missing value are named, strange words are asked about") {
    const std::string text =
        "t\tturb\n2025-04-03 13:00Z\t-9999\n2025-04-03 13:10Z\tNaN\n2025-04-03 13:20Z\t4.5\n";
    CHECK(read(text, {}) == "2025-04-03T13:00:00Z=- 2025-04-03T13:10:00Z=- 2025-04-03T13:20:00Z=4.50 ");
    CHECK(guess(text).assumed.back() == "each time says its own offset");
    const std::string strange = "t,turb\n2025-04-03 13:00Z,over\n2025-04-03 13:10Z,4.5\n";
    CHECK(asked(guess(strange)) == Asked{"missing"});
    LoggerAnswers answers;
    answers.missing = {"over"};
    CHECK(read(strange, answers) == "2025-04-03T13:00:00Z=- 2025-04-03T13:10:00Z=4.50 ");
}

TEST_CASE("which of several columns is turbidity is asked where their names do not say") {
    const std::string text = "t,ch1,ch2\n2025-04-03 13:00Z,1.5,2.5\n2025-04-03 13:10Z,1.75,2.75\n";
    CHECK(asked(guess(text)) == Asked{"column"});
    LoggerAnswers answers;
    answers.column = "ch2";
    CHECK(read(text, answers) == "2025-04-03T13:00:00Z=2.50 2025-04-03T13:10:00Z=2.75 ");
    answers.column = "2";
    CHECK(read(text, answers).substr(21, 4) == "1.50");
}

TEST_CASE("of several sites in one file only this site's rows are read") {
    const std::string text =
        "site,time,\"Turbidity, NTU\"\nR1,2025-04-03 13:00Z,1.5\nC1,2025-04-03 13:00Z,0.5\n"
        "R1,2025-04-03 13:10Z,1.75\nC1,2025-04-03 13:10Z,0.25\n";
    CHECK(read(text, {}) == "2025-04-03T13:00:00Z=1.50 2025-04-03T13:10:00Z=1.75 ");
    const auto other = guess_layout(HeldBytes(text), "logger.txt", "R9", {}, std::nullopt);
    CHECK(asked(*other) == Asked{"rows"});
}

TEST_CASE("columns parted by blanks, with the clock in a column of its own") {
    CHECK(read("20250403 13:00  5.25\n20250403 13:10  6.25\n", zone("UTC")) ==
          "2025-04-03T13:00:00Z=5.25 2025-04-03T13:10:00Z=6.25 ");
}

TEST_CASE("UTF-16 and a byte order mark are no hindrance") {
    const std::string plain = "t,turb\n2025-04-03 13:00Z,1.5\n";
    CHECK(read("\xEF\xBB\xBF" + plain, {}) == "2025-04-03T13:00:00Z=1.50 ");
    std::string wide = "\xFF\xFE";
    for (const char c : plain)
        wide += std::string{c, '\0'};
    CHECK(read(wide, {}) == "2025-04-03T13:00:00Z=1.50 ");
}

TEST_CASE("a thousand is told from a decimal comma, or asked") {
    CHECK(read("t;turb\n2025-04-03 13:00Z;0,125\n2025-04-03 13:10Z;1,125\n", {}) ==
          "2025-04-03T13:00:00Z=0.12 2025-04-03T13:10:00Z=1.12 ");
    CHECK(asked(guess("t;turb\n2025-04-03 13:00Z;2,125\n2025-04-03 13:10Z;1,125\n")) == Asked{"decimal"});
}

TEST_CASE("what was said of a site's last file holds for the next, and is said") {
    LoggerLayout before;
    before.zone = "+12:00";
    before.dates = DateOrder::dmy;
    const auto found = guess("t,turb\n3/4/2025 13:00,5.0\n", {}, before);
    CHECK(found.questions.empty());
    CHECK(found.layout.dates == DateOrder::dmy);
    CHECK(found.layout.zone == "+12:00");
    CHECK(found.assumed.back() == "times are in +12:00, as in this site's last file");
}

TEST_CASE("rows out of order and rows said twice are counted") {
    const std::string text =
        "t,turb\n2025-04-03 13:10Z,1\n2025-04-03 13:00Z,2\n2025-04-03 13:00Z,2\n2025-04-03 13:10Z,3\n\nEnd "
        "of data\n";
    const auto rows = read_logger_rows(HeldBytes(text), guess(text).layout, "logger.txt");
    CHECK(rows.readings == 4);
    CHECK(rows.backwards == 1);
    CHECK(rows.twice == 1);
    CHECK(rows.otherwise == 1);
    CHECK(rows.left_out == 1);
}

TEST_CASE("how a file is read survives being written down") {
    auto layout = guess("t,turb\n2025-04-03 13:00Z,-9999\n2025-04-03 13:10Z,4\n").layout;
    layout.clock_column = 3;
    layout.rows_column = 0;
    layout.rows_value = "R1";
    CHECK(layout_from(layout_text(layout)) == layout);
    CHECK_FALSE(layout_from("time,value"));
}

TEST_CASE("a text without a table is refused, and rubbish ends in no worse") {
    CHECK(guess_layout(HeldBytes("hello\nworld\n"), "f", "R1", {}, std::nullopt).refusals().front().code ==
          "no-table");
    CHECK_FALSE(guess_layout(HeldBytes(""), "f", "R1", {}, std::nullopt));
    unsigned state = 7;
    for (int i = 0; i < 300; ++i) {
        std::string text = "t,turb\n2025-04-03 13:00Z,1\n2025-04-03 13:10Z,2\n";
        for (int k = 0; k < 6; ++k) {
            state = state * 1664525U + 1013904223U;
            text[(state >> 8U) % text.size()] = static_cast<char>(state >> 24U);
        }
        const auto found = guess_layout(HeldBytes(text), "f", "R1", zone("UTC"), std::nullopt);
        if (found && found->questions.empty()) (void)read_logger_rows(HeldBytes(text), found->layout, "f");
    }
}
