// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "model/folder/json_text.h"
#include "model/folder/pretty_json.h"
#include "tests/unit/folder/folder_support.h"

using namespace spoilbook;
using namespace spoilbook::test;
using Catch::Matchers::Contains;

namespace {

std::string refused(const std::string& bytes) {
    Complaints complaints;
    const auto json = read_json(bytes, "plant.json", complaints);
    CHECK(json.has_value() == !complaints.any());
    return all_lines(complaints.refusals());
}

}  // namespace

TEST_CASE("a member given twice is refused with its path", "[folder]") {
    CHECK_THAT(refused(R"({"tugs": [{"name": "Plover"}, {"name": "a", "name": "b"}]})"),
               Contains("twice | plant.json tugs[1].name"));
    CHECK(refused(R"({"tugs": [{"name": "a"}, {"name": "b"}]})") == "");
}

TEST_CASE("what is not JSON is refused with line and column", "[folder]") {
    CHECK_THAT(refused("{\n  \"tugs\": [,]\n}"), Contains("not-json | plant.json line 2 column 12"));
    CHECK_THAT(refused("{\"a\": NaN}"), Contains("not-json"));
    CHECK_THAT(refused("{\"a\": 1e999}"), Contains("not-json") && Contains("beyond"));
    CHECK_THAT(refused("{\"a\": 1} x"), Contains("not-json"));
    CHECK_THAT(refused(""), Contains("not-json"));
    CHECK_THAT(refused("{\"a\": \"\xFF\"}"), Contains("not-utf-8 | plant.json line 1 column 8"));
    CHECK_THAT(refused(R"({"a": ["x", "b\u0000"]})"), Contains("nul-byte | plant.json a[1]"));
    CHECK(refused("\xEF\xBB\xBF{}") == "");
}

TEST_CASE("JSON that nests without end is refused, not followed", "[folder]") {
    CHECK_THAT(refused(std::string(100000, '[')), Contains("too-deep"));
    std::string deep = "{\"a\":";
    for (int i = 0; i < 100; ++i)
        deep += "{\"a\":";
    CHECK_THAT(refused(deep), Contains("too-deep"));
}

TEST_CASE("equal values have one canonical form", "[folder]") {
    const auto a = nlohmann::json::parse(R"({"b": 12.0, "a": " x ", "c": null, "d": [1.5, -0.0, 1e3]})");
    CHECK(canonical(a).dump() == R"({"a":"x","b":12,"d":[1.5,0,1000]})");
    CHECK(canonical(canonical(a)) == canonical(a));
}

TEST_CASE("JSON is written for people, one row of a table a line", "[folder]") {
    nlohmann::ordered_json barge = nlohmann::ordered_json::object();
    barge["name"] = "Teal";
    barge["ullage_table"] = nlohmann::ordered_json::parse("[[0,420],[1.5,330]]");
    barge["none"] = nlohmann::ordered_json::array();
    CHECK(pretty_json(barge) ==
          "{\n  \"name\": \"Teal\",\n  \"ullage_table\": [\n    [0, 420],\n    [1.5, 330]\n  ],\n  \"none\": "
          "[]\n}\n");
}
