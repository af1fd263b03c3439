// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "model/consent/time_rule.h"
#include "model/unit/time_text.h"

using namespace spoilbook;
using nlohmann::json;

namespace {

Instant local(const char* text) {
    return *parse_instant(text, *Zone::named("Pacific/Auckland"));
}

}  // namespace

TEST_CASE("a condition by the level of the tide is not told by the clock alone") {
    const auto rule = time_rule_from(json{{"mode", "forbid"}, {"tide_level_m", {{"max", 0.5}}}});
    CHECK(rule->needs_more);
}

TEST_CASE("a date without an end is that day alone, whole") {
    const Zone zone = *Zone::named("Pacific/Auckland");
    const auto rule = time_rule_from(json{{"mode", "forbid"}, {"dates", json::array({"12-25"})}});
    REQUIRE(rule.ok());
    CHECK_FALSE(holds_at(*rule, zone, local("2025-12-24T23:59")));
    CHECK(holds_at(*rule, zone, local("2025-12-25T00:00")));
    CHECK(holds_at(*rule, zone, local("2025-12-25T23:59")));
    CHECK(holds_until(*rule, zone, local("2025-12-25T10:00")) == local("2025-12-26T00:00"));
}
