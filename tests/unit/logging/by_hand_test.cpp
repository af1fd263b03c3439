// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/logging/by_hand.h"

#include <catch2/catch.hpp>

using namespace spoilbook;

namespace {

std::optional<Refusal> why_not(const char* field, const char* text) {
    return why_not_by_hand(kind("barge"), kind("barge").field(field), Value{std::string(text)});
}

}  // namespace

TEST_CASE("a barge's table written by hand is held to the ranges that a folder's is", "[by_hand]") {
    CHECK_FALSE(why_not("ullage_table", "[[0.2,420],[1.2,300]]"));
    const auto deep = why_not("ullage_table", "[[0.2,420],[120,300]]");
    REQUIRE(deep);
    CHECK(deep->code == "out-of-range");
    CHECK(deep->what == "row 2: 120 is outside the range of ullage");
    CHECK(why_not("hydrostatic_table", "[[1,420],[31,880]]")->code == "out-of-range");
    CHECK(why_not("ullage_table", "[[1,2,3],[2,3,4]]")->code == "not-a-table");
}

TEST_CASE("a table whose curve turns back is not written by hand", "[by_hand]") {
    const auto back = why_not("ullage_table", "[[0.2,420],[1.2,430]]");
    REQUIRE(back);
    CHECK(back->code == "ullage-table");
    CHECK(back->what == "row 2: 430 m³ does not fall as the ullage grows");
}
