// SPDX-License-Identifier: GPL-3.0-or-later
// Files larger than the pieces that they are read in; all numbers invented.
#include <catch2/catch.hpp>
#include <random>

#include "model/turbidity/logger_guess.h"
#include "model/turbidity/logger_lines.h"
#include "model/turbidity/logger_rows.h"

using namespace spoilbook;

namespace {

/// Lines of all lengths, with quoted breaks, and where each must end; about a megabyte.
struct Written {
    std::string text;
    std::vector<std::string> lines;
};

Written written(const std::string& end, unsigned seed) {
    std::mt19937 dice(seed);
    Written out;
    while (out.text.size() < 1'000'000) {
        std::string line(dice() % 90, 'a');
        if (dice() % 7 == 0) line += ",\"x" + (end == "\r" ? std::string(" ") : end) + "y\",z";
        if (dice() % 5000 == 0) line += std::string(300'000, 'b');
        out.text += line + end;
        out.lines.push_back(line);
    }
    out.text += "the last has no end";
    out.lines.emplace_back("the last has no end");
    return out;
}

std::vector<std::string> lines_of(const std::string& bytes) {
    const HeldBytes source(bytes);
    LoggerLines lines(source);
    std::vector<std::string> found;
    for (std::string_view line; lines.next(line);)
        found.emplace_back(line);
    return found;
}

}  // namespace

TEST_CASE("lines that lie across two pieces of a file are whole") {
    for (const char* end : {"\n", "\r\n", "\r"}) {
        for (unsigned seed = 1; seed <= 3; ++seed) {
            const auto made = written(end, seed);
            CHECK(lines_of(made.text) == made.lines);
            std::string wide = "\xFE\xFF";
            for (const char c : made.text)
                wide += std::string{'\0', c};
            CHECK(lines_of(wide) == made.lines);
            CHECK(lines_of("\xEF\xBB\xBF" + made.text) == made.lines);
        }
    }
}

TEST_CASE("of a long file out of order, what is said twice is counted wherever it stands") {
    // Each minute once, then the first thousand again from the last to the first, every tenth of them
    // otherwise.
    std::string text = "t,turb\n";
    const auto row = [&](int minute, int value) {
        char line[64];
        std::snprintf(line, sizeof line, "2025-04-%02d %02d:%02dZ,%d\n", 1 + minute / 1440, minute / 60 % 24,
                      minute % 60, value);
        text += line;
    };
    for (int minute = 0; minute < 30'000; ++minute)
        row(minute, minute % 50);
    for (int minute = 999; minute >= 0; --minute)
        row(minute, minute % 10 == 0 ? 77 : minute % 50);
    const auto guess = guess_layout(HeldBytes(text), "f", "R1", {}, std::nullopt);
    REQUIRE(guess->questions.empty());
    std::size_t handed = 0;
    const auto rows = read_logger_rows(HeldBytes(text), guess->layout, "f", [&](const auto&) { ++handed; });
    CHECK(rows.readings == 31'000);
    CHECK(handed == 31'000);
    CHECK(rows.backwards == 1000);
    CHECK(rows.otherwise == 100);
    CHECK(rows.twice == 900);
    CHECK(rows.first.size() == 5);
    CHECK(rows.span->to - rows.span->from == 29'999 * ms_per_minute + 1);
}
