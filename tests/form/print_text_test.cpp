// SPDX-License-Identifier: GPL-3.0-or-later
// Text is printed as it was written, or says which letter it lacks; it never leaves its column.
#include <catch2/catch.hpp>
#include <numeric>
#include <string>

#include "forms/print/column_widths.h"
#include "forms/print/print_session.h"
#include "forms/print/typeface.h"

using namespace spoilbook::print;

TEST_CASE("letters and signs of the trade are printed as they are", "[print]") {
    const PrintSession session;
    for (const char* text : {"Whānau Ōtākou", "Muñoz Łukasz Zoë", "m³ ± 0.3 − 9.6 ≤ ≥ µ ° ½ %",
                             "Кораблёв Ωμέγα", "“quoted” – dash … ’"}) {
        CHECK(printable(text).toStdString() == text);
    }
    CHECK(printable("a\tb\r\nc\rd").toStdString() == "a b\nc\nd");
    CHECK(printable("e\xCC\x81").toStdString() == "é");  // e and a combining acute are one letter
}

TEST_CASE("a letter that the typeface lacks shows as its code", "[print]") {
    const PrintSession session;
    CHECK(printable("中").toStdString() == "[U+4E2D]");
    CHECK(printable("🚢").toStdString() == "[U+1F6A2]");
}

TEST_CASE("nothing hidden in a text changes what the reader sees", "[print]") {
    const PrintSession session;
    const std::string right_to_left{'\xE2', '\x80', '\xAE'};  // U+202E
    CHECK(printable("12" + right_to_left + "34").toStdString() == "12[U+202E]34");
    CHECK(printable(std::string("a\0b\x1b[2Jc", 8)).toStdString() == "ab[2Jc");
    CHECK(printable("a\xFF"
                    "b")
              .toStdString() ==
          "a\xEF\xBF\xBD"
          "b");  // not UTF-8: U+FFFD
}

TEST_CASE("all digits have one width, in both weights", "[print]") {
    const PrintSession session;
    for (const Type& type : {body_type, strong_type, digest_type}) {
        for (const char digit : std::string("123456789")) {
            CHECK(width_of(QString(QLatin1Char(digit)), type) == width_of(QStringLiteral("0"), type));
        }
    }
}

TEST_CASE("lines hold every word once and none is wider than its column", "[print]") {
    const PrintSession session;
    const QString text = printable(
        "The barge had been set down by the tide; Donaudampfschifffahrtsgesellschaftskapitänsmützenablage "
        "2026-05-14T110233Z_plover_receiver_of_the_second_kind.nmea was read twice.");
    for (const double width : {30.0, 60.0, 111.0, 400.0, 2000.0}) {
        QString joined;
        for (const QString& line : break_lines(text, body_type, width)) {
            CHECK(width_of(line, body_type) <= width + 0.1);
            joined += line;
        }
        CHECK(joined.remove(u' ') == QString(text).remove(u' '));
    }
    CHECK(break_lines(QString(), body_type, 100).size() == 1);
    CHECK(break_lines(QStringLiteral("a\n\nb"), body_type, 100).size() == 3);
}

TEST_CASE("a number stays with its groups, its unit and its uncertainty", "[print]") {
    const PrintSession session;
    const QString text = printable("in all 215 000 m³ ± 3 100 m³ by 15 % of it");
    for (int width = 52; width < 240; ++width) {
        for (const QString& line : break_lines(text, body_type, width)) {
            INFO(width << ": " << line.toStdString());
            CHECK_FALSE(line.endsWith(u'±'));
            CHECK_FALSE(line.endsWith(u"215"));
            CHECK_FALSE(line.endsWith(u"215 000"));
            CHECK_FALSE(line.endsWith(u"100"));
            CHECK_FALSE(line.endsWith(u"15"));
        }
    }
}

TEST_CASE("columns fill the table whatever they ask for", "[print]") {
    const auto sum = [](const std::vector<double>& widths) {
        return std::accumulate(widths.begin(), widths.end(), 0.0);
    };
    const std::vector<ColumnWish> roomy{{20, 40, 0}, {10, 30, 0}};
    const std::vector<ColumnWish> weighted{{20, 40, 0}, {10, 30, 2}};
    const std::vector<ColumnWish> crowded{{20, 20, 0}, {30, 50, 0}, {40, 4000, 0}};
    CHECK(column_widths(roomy, 140) == std::vector<double>{80, 60});
    CHECK(column_widths(weighted, 140) == std::vector<double>{40, 100});
    // 110 are left above the least: the second needs 20 of them, the long remark gets the other 90.
    CHECK(column_widths(crowded, 200) == std::vector<double>{20, 50, 130});
    for (const double available : {1.0, 45.0, 90.0, 91.0, 200.0, 5000.0}) {
        CHECK_THAT(sum(column_widths(crowded, available)), Catch::Matchers::WithinAbs(available, 1e-6));
    }
    CHECK(column_widths({}, 100).empty());
}
