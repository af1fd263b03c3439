// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "tests/unit/folder/folder_support.h"

using namespace spoilbook;
using namespace spoilbook::test;
using Catch::Matchers::Contains;

namespace {

const char* const square =
    "[[711640,5497370],[711740,5497370],[711740,5497450],[711640,5497450],[711640,5497370]]";

std::string crs(const std::string& name) {
    return R"("crs":{"type":"name","properties":{"name":")" + name + R"("}})";
}

std::string claims(const std::string& crs_member, const std::string& geometry,
                   const std::string& of_feature = "") {
    return R"({"type":"FeatureCollection",)" + (crs_member.empty() ? "" : crs_member + ",") +
           R"("features":[{"type":"Feature",)" + of_feature +
           R"("properties":{"claim":"FB1","material":"sand"},"geometry":)" + geometry + "}]}";
}

std::string polygon(const std::string& rings) {
    return R"({"type":"Polygon","coordinates":[)" + rings + "]}";
}

std::string refused(const std::string& text) {
    TempFolder folder;
    write_marram(folder);
    return all_lines(refusals_of(folder.with("claims.geojson", text)));
}

}  // namespace

TEST_CASE("outlines may be in the book's own system or in longitude and latitude, and no other", "[folder]") {
    const std::string metres = polygon(square);
    const std::string degrees = polygon("[[179.5,-40.6],[179.51,-40.6],[179.51,-40.61],[179.5,-40.6]]");
    CHECK(refused(claims(crs("urn:ogc:def:crs:EPSG::32760"), metres)) == "");
    CHECK(refused(claims(crs("EPSG:32760"), metres)) == "");
    CHECK(refused(claims(crs("urn:ogc:def:crs:OGC:1.3:CRS84"), degrees)) == "");
    CHECK(refused(claims(crs("EPSG:4326"), degrees)) == "");
    CHECK(refused(claims("", degrees)) == "");
    CHECK(refused(claims("", metres, crs("EPSG:32760") + ",")) == "");
    CHECK_THAT(refused(claims(crs("urn:ogc:def:crs:EPSG::2193"), metres)),
               Contains("crs | claims.geojson crs") && Contains("EPSG:32760"));
    CHECK_THAT(refused(claims(R"("crs":"EPSG:32760")", metres)), Contains("crs | claims.geojson crs"));
    CHECK_THAT(refused(claims("", metres)), Contains("geometry | claims.geojson features[0].geometry"));
    CHECK_THAT(refused(claims(crs("EPSG:32760"), degrees)), Contains("degrees, not metres"));
}

TEST_CASE("an outline that is none is refused with its place", "[folder]") {
    const std::string system = crs("EPSG:32760");
    CHECK_THAT(refused(claims(system, polygon("[[0,0],[900,0],[900,900],[0,900]]"))), Contains("not closed"));
    CHECK_THAT(refused(claims(system, polygon("[[0,0],[900,0],[0,0]]"))), Contains("fewer than 4 positions"));
    CHECK_THAT(refused(claims(system, polygon("[[0,0],[900,900],[900,0],[0,900],[0,0]]"))),
               Contains("cross"));
    CHECK_THAT(refused(claims(system, polygon("[[0,0],[900,\"x\"],[900,0],[0,0]]"))),
               Contains("features[0].geometry.coordinates[0][1]"));
    CHECK_THAT(refused(claims(system, polygon("[[0,0],[900],[900,0],[0,0]]"))), Contains("no position"));
    CHECK_THAT(refused(claims(system, R"({"type":"Point","coordinates":[1,2]})")), Contains("Polygon"));
    CHECK_THAT(refused(claims(system, R"({"type":"Polygon","coordinates":[]})")), Contains("no coordinates"));
    CHECK_THAT(refused(claims(system, R"({"type":"MultiPolygon","coordinates":[[]]})")), Contains("no ring"));
    CHECK_THAT(refused(claims("", polygon("[[179,95],[179.1,95],[179.1,95.1],[179,95]]"))),
               Contains("no place on earth"));
    CHECK_THAT(refused(R"({"type":"Feature"})"), Contains("no FeatureCollection"));
    CHECK_THAT(refused(R"({"type":"FeatureCollection","features":[{"type":"Feature","properties":
        {"claim":"FB1","target_level":-9.6},"geometry":null}]})"),
               Contains("unknown-member | claims.geojson features[0].properties.target_level") &&
                   Contains("did you mean target_level_m?"));
}

TEST_CASE("a ground, its cells and its exclusions are told apart", "[folder]") {
    TempFolder folder;
    write_marram(folder);
    const Book book = book_from(folder);
    CHECK(book.rows(kind("ground")).size() == 1);
    CHECK(book.rows(kind("cell")).size() == 2);
    const auto wreck = book.labelled(kind("cell"), "wreck");
    REQUIRE(wreck);
    CHECK(wreck->values[*kind("cell").index_of("kind")] == Value{std::string("exclusion")});
    std::string grounds = text_of_file(folder.in("grounds.geojson"));
    grounds.replace(grounds.find(R"("kind": "cell")"), 14, R"("kind": "sell")");
    CHECK_THAT(all_lines(refusals_of(folder.with("grounds.geojson", grounds))), Contains("not-a-choice"));
}

TEST_CASE("an export holds outlines of both sorts", "[folder]") {
    TempFolder folder;
    write_marram(folder);
    Book book = book_from(folder);
    TempFolder more;
    more.with("claims.geojson", R"({"type":"FeatureCollection","features":[{"type":"Feature","properties":
        {"claim":"FB9"},"geometry":)" +
                                    polygon("[[179.5,-40.6],[179.51,-40.6],[179.51,-40.61],[179.5,-40.6]]") +
                                    "}]}");
    REQUIRE(all_lines(import_folder(book, more.path(), act_at_noon()).refusals()) == "");
    TempFolder out;
    REQUIRE(export_folder(book, out.in("out")).ok());
    const std::string written = text_of_file(out.in("out/claims.geojson"));
    CHECK_THAT(written, Contains(R"("type":"Feature","crs":{"type":"name")"));
    Book again = Book::in_memory("office");
    REQUIRE(all_lines(import_folder(again, out.in("out"), act_at_noon()).refusals()) == "");
    const auto crs_of = [&](const std::string& claim) {
        return text_of(kind("claim"), again.labelled(kind("claim"), claim)->values, "crs");
    };
    CHECK(crs_of("FB1") == "EPSG:32760");
    CHECK(crs_of("FB9") == "");
}
