// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/calendar_file.h"

#include <catch2/catch.hpp>

using namespace spoilbook;

namespace {

/// As RFC 5545 section 3.1 says it: "removing the CRLF and the linear white space character that immediately
/// follows".
std::string unfolded(std::string text) {
    for (auto at = text.find("\r\n "); at != std::string::npos; at = text.find("\r\n "))
        text.erase(at, 3);
    return text;
}

std::size_t longest_line(const std::string& text) {
    std::size_t longest = 0;
    for (std::size_t from = 0; from < text.size();) {
        const auto end = text.find("\r\n", from);
        longest = std::max(longest, end - from);
        from = end + 2;
    }
    return longest;
}

}  // namespace

TEST_CASE("a text is escaped as RFC 5545 shows it", "[calendar]") {
    // RFC 5545 section 3.3.11, its example (MEM).
    CHECK(escaped_text("Project XYZ Final Review\nConference Room - 3B\nCome Prepared.") ==
          R"(Project XYZ Final Review\nConference Room - 3B\nCome Prepared.)");
    CHECK(escaped_text("cell C1, C2; see K:\\letters") == R"(cell C1\, C2\; see K:\\letters)");
    CHECK(escaped_text("a\r\nb\x01\tc\x7F") == "a\\nb\tc");
}

TEST_CASE("a line of 75 octets stays one, and of 76 becomes two", "[calendar]") {
    CHECK(folded_line(std::string(75, 'a')) == std::string(75, 'a') + "\r\n");
    CHECK(folded_line(std::string(76, 'a')) == std::string(75, 'a') + "\r\n a\r\n");
    // 75 octets, the space, 74 more.
    CHECK(folded_line(std::string(150, 'a')) ==
          std::string(75, 'a') + "\r\n " + std::string(74, 'a') + "\r\n a\r\n");
}

TEST_CASE("a folded line unfolds to itself and no letter is torn", "[calendar]") {
    // RFC 5545 section 3.1, the line of its example (MEM), made long.
    std::string line = "DESCRIPTION:";
    for (int i = 0; i < 9; ++i)
        line += "This is a long description that exists on a long line: 1 000 m³ – höher. ";
    for (std::size_t shift = 0; shift < 8; ++shift) {
        const auto folded = folded_line(line.substr(0, 12) + std::string(shift, 'x') + line.substr(12));
        CHECK(unfolded(folded) == line.substr(0, 12) + std::string(shift, 'x') + line.substr(12) + "\r\n");
        CHECK(longest_line(folded) <= 75);
        // A continuation byte of UTF-8 never follows the fold's space.
        for (auto at = folded.find("\r\n "); at != std::string::npos; at = folded.find("\r\n ", at + 1))
            CHECK((static_cast<unsigned char>(folded[at + 3]) & 0xC0U) != 0x80U);
    }
}
