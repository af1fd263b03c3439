// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/unit/position_text.h"

#include <catch2/catch.hpp>
#include <cmath>

using namespace spoilbook;
using Catch::Matchers::WithinAbs;

namespace {

double lat(const std::string& text) {
    return parse_degrees(text, Axis::latitude).value();
}

double lon(const std::string& text) {
    return parse_degrees(text, Axis::longitude).value();
}

std::string code(const std::string& text, Axis axis = Axis::latitude) {
    const auto read = parse_degrees(text, axis);
    return read ? "" : read.refusals().front().code;
}

}  // namespace

TEST_CASE("a position is taken as a chart, a receiver and a deck log write it", "[position]") {
    // 12.345 min = 0.20575°, 55.678 min = 0.92796…°, 20.7 s = 0.345 min: by hand.
    for (const char* text :
         {"-41.20575", "41.20575 S", "S41.20575", "41.20575°s", "41°12.345'S", "41° 12.345' S", "41 12.345 S",
          "S 41 12.345", "41-12.345S", "-41°12.345'", "41°12′20.7″S", "41 12 20.7 S", "41°12'20.7''S",
          "S41-12-20.7", "41 deg 12 min 20.7 sec S", "−41 12.345"}) {
        CAPTURE(text);
        CHECK_THAT(lat(text), WithinAbs(-41.20575, 5e-10));
    }
    for (const char* text :
         {"174°55.678'E", "174 55.678E", "E174°55.678'", "174°55'40.68\"E", "174.92796667"}) {
        CAPTURE(text);
        CHECK_THAT(lon(text), WithinAbs(174.92796667, 5e-9));
    }
    CHECK_THAT(lon("W 0°30'"), WithinAbs(-0.5, 5e-12));
    CHECK(lat("0°00'S") == 0);
    CHECK_FALSE(std::signbit(lat("0°00'S")));
}

TEST_CASE("what may be of the other half of the earth, or says two things, is unclear", "[position]") {
    CHECK(code("41 12.345") == "unclear-position");
    CHECK(code("41°12'20\"") == "unclear-position");
    CHECK(code("-41°12.345'S") == "unclear-position");
    CHECK(code("174°55.678'E") == "unclear-position");
    CHECK(code("41°12.345'S", Axis::longitude) == "unclear-position");
    CHECK(code("41°12.345'S 174°55.678'E") == "unclear-position");
    CHECK(parse_degrees("41 12.345", Axis::latitude).refusals().front().mend ==
          "write the latitude as -41.20575, 41°12.345'S or 41°12'20.7\"S");
}

TEST_CASE("minutes and seconds lie below sixty", "[position]") {
    CHECK(code("41°60'S") == "out-of-range");
    CHECK(code("41°12'60\"S") == "out-of-range");
    CHECK(code("41°59.999'S").empty());
}

TEST_CASE("what is no position is refused", "[position]") {
    for (const char* text :
         {"", "S", "north", "None", "41,20575", "41°12,345'S", "41.5°12'S", "41'S", "41°20\"S", "41 S 12.345",
          "1 2 3 4 S", "4.1.2", "41 -12.3", "41°°12'S", "41S S", "--41", "inf", "41°12.345'Z"}) {
        CAPTURE(text);
        CHECK(code(text) == "not-a-number");
    }
}
