// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "tests/unit/folder/folder_support.h"

using namespace spoilbook;
using namespace spoilbook::test;
using Catch::Matchers::Contains;

namespace {

struct Added {
    std::string refused;
    std::size_t added = 0;
    std::size_t held = 0;
    std::string notes;
};

Added add(Book& book, const TempFolder& folder) {
    const auto outcome = import_folder(book, folder.path(), act_at_noon());
    if (!outcome) return {all_lines(outcome.refusals()), 0, 0, ""};
    return {"", outcome->added_in_all(), outcome->already_held_in_all(), all_lines(outcome->notes)};
}

Book marram_book() {
    TempFolder folder;
    write_marram(folder);
    return book_from(folder);
}

}  // namespace

TEST_CASE("rows added later refer to what the book has", "[folder]") {
    Book book = marram_book();
    TempFolder more;
    more.with("trips.csv",
              "trip,load,tug,departed,ground,cell\nT-0002,L-1,Plover,2025-08-05T08:00,Gannet Patch,GP1\n");
    const auto done = add(book, more);
    CHECK(done.refused == "");
    CHECK(done.added == 1);
    const auto row = book.labelled(kind("trip"), "T-0002");
    REQUIRE(row);
    const Value& load = row->values[*kind("trip").index_of("load")];
    CHECK(book.label_of(kind("load"), std::get<Id>(load)) == "L-1");
    // 08:00 in the book's zone, NZST (UTC+12), without harbour.json in the folder.
    CHECK(row->values[*kind("trip").index_of("departed")] == Value{std::int64_t{1754337600000}});
}

TEST_CASE("an id that the book has with other values is refused with both", "[folder]") {
    Book book = marram_book();
    TempFolder more;
    more.with("people.csv", "name,role\nAna,manager\nBram,tug_master\nCaro,officer\n");
    const auto done = add(book, more);
    CHECK_THAT(done.refused, Contains("other-values | people.csv line 2") &&
                                 Contains("the book has \"skipper\", the folder \"manager\""));
    CHECK(book.rows(kind("person")).size() == 2);
}

TEST_CASE("a column that is absent is not recorded, and so another value than one that is", "[folder]") {
    Book book = marram_book();
    TempFolder more;
    more.with("stations.csv", "station,shift,claim\nST-1,S-01,FB1\n");
    CHECK_THAT(add(book, more).refused, Contains("other-values") && Contains("the folder nothing"));
}

TEST_CASE("the harbour of a folder that is added must be the book's", "[folder]") {
    Book book = marram_book();
    TempFolder more;
    more.with("harbour.json", R"({"name": "Marram Harbour", "epsg": 32760, "zone": "Pacific/Auckland"})");
    CHECK_THAT(add(book, more).refused, Contains("other-values | harbour.json"));
    more.with("harbour.json", R"({"name": "Other Harbour", "epsg": 32760, "zone": "Pacific/Auckland"})");
    CHECK_THAT(add(book, more).refused, Contains("other-values | harbour.json") && Contains("Other Harbour"));
}

TEST_CASE("rows without an id are held as often as the book has their like", "[folder]") {
    Book book = marram_book();
    TempFolder more;
    const std::string tally = "L-1,ST-1,general,87\n";
    more.with("tallies.csv", "load,station,bucket,count\n" + tally + tally);
    const auto done = add(book, more);
    CHECK(done.refused == "");
    CHECK(done.added == 1);
    CHECK(done.held == 1);
    CHECK(add(book, more).added == 0);
    CHECK(book.rows(kind("tally")).size() == 2);
}

TEST_CASE("where one row is refused nothing lands", "[folder]") {
    Book book = marram_book();
    TempFolder more;
    more.with("people.csv", "name,role\nEsi,reader\n").with("trips.csv", "trip,load\nT-9,L-9\n");
    CHECK_THAT(add(book, more).refused, Contains("unknown-reference | trips.csv line 2 column load"));
    CHECK(book.rows(kind("person")).size() == 2);
}

TEST_CASE("a bucket is looked up on the dredger of the tally's own shift", "[folder]") {
    TempFolder folder;
    write_marram(folder);
    folder.with("plant.json",
                R"({"dredgers": [{"name": "Heron", "buckets": [{"name": "general", "capacity_m3": 4}]},
        {"name": "Egret", "buckets": [{"name": "general", "capacity_m3": 2}]}], "tugs": [{"name": "Plover"}],
        "barges": [{"name": "Teal"}]})");
    const Book book = book_from(folder);
    const auto tallies = book.rows(kind("tally"));
    REQUIRE(tallies.size() == 1);
    const Id bucket = std::get<Id>(tallies[0].values[*kind("tally").index_of("bucket")]);
    const auto row = book.row(kind("bucket"), bucket);
    REQUIRE(row);
    CHECK(row->values[*kind("bucket").index_of("capacity_m3")] == Value{4.0});
}

TEST_CASE("a release that names no ground has its cell in the ground of its trip", "[folder]") {
    TempFolder folder;
    write_marram(folder);
    folder.with("releases.csv", "release,trip,cell,share\nR-1,T-0001,GP1,0.5\nR-2,T-0001,wreck,0.5\n");
    CHECK(all_lines(refusals_of(folder)) == "");
    folder.with("releases.csv", "release,trip,cell\nR-1,T-0001,GP7\n");
    CHECK_THAT(all_lines(refusals_of(folder)), Contains("no cell of Gannet Patch"));
}

TEST_CASE("a condition may stand in two versions", "[folder]") {
    Book book = marram_book();
    TempFolder more;
    more.with("consents.json", R"({"consents": [{"consent": "MHB-25-117", "holder": "Marram Harbour Board",
        "authority": "Marram Regional Council", "granted": "2025-05-02", "commences": "2025-08-04",
        "expires": "2030-08-04", "year_starts": "07-01",
        "not_working": {"weekends": true, "yearly": ["12-20..01-10"], "dates": ["2025-10-27"]},
        "conditions": [{"condition": "20.2", "from": "2026-01-01", "text": "tier 2, lower", "kind": "series",
        "variable": "turbidity", "sites": ["R1"], "control": "C1", "compare": {"above_control": 8}}]}]})");
    const auto done = add(book, more);
    CHECK(done.refused == "");
    CHECK(done.added == 1);
    CHECK(done.held == 1);
}

TEST_CASE("an import is one entry of the journal that says import", "[folder]") {
    TempFolder folder;
    write_marram(folder);
    Book book = Book::in_memory("office");
    const auto outcome = import_folder(book, folder.path(), act_at_noon());
    REQUIRE(outcome.ok());
    REQUIRE(outcome->entry.has_value());
    CHECK(outcome->entry->seq == 1);
}
