// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "tests/unit/folder/folder_support.h"

using namespace spoilbook;
using namespace spoilbook::test;

TEST_CASE("a sound folder lands without a note", "[folder]") {
    TempFolder folder;
    write_marram(folder);
    CHECK(all_lines(refusals_of(folder)) == "");
    CHECK(all_lines(notes_of(folder)) == "");
}

TEST_CASE("a book written out and read again gives the same rows and the same bytes", "[folder]") {
    TempFolder folder;
    write_marram(folder);
    const Book book = book_from(folder);
    TempFolder out;
    const auto first = export_folder(book, out.in("first"));
    REQUIRE(all_lines(first.refusals()) == "");
    CHECK(all_lines(first->notes) == "");

    Book again = Book::in_memory("office");
    const auto outcome = import_folder(again, out.in("first"), act_at_noon());
    REQUIRE(all_lines(outcome.refusals()) == "");
    CHECK(all_lines(outcome->notes) == "");
    REQUIRE(export_folder(again, out.in("second")).ok());
    CHECK(files_of(out.in("first")) == files_of(out.in("second")));
    for (const Kind& kind : all_kinds()) {
        INFO(kind.name);
        CHECK(book.rows(kind).size() == again.rows(kind).size());
    }
}

TEST_CASE("adding the folder that a book was made from adds nothing", "[folder]") {
    TempFolder folder;
    write_marram(folder);
    Book book = book_from(folder);
    const auto outcome = import_folder(book, folder.path(), act_at_noon());
    REQUIRE(all_lines(outcome.refusals()) == "");
    CHECK(outcome->added_in_all() == 0);
    CHECK(outcome->already_held_in_all() > 20);
    CHECK_FALSE(outcome->entry.has_value());
    CHECK(all_lines(outcome->notes) == "");
}

TEST_CASE("the demo season lands, goes out and comes back", "[folder]") {
    const std::string season = std::string(SPOILBOOK_SOURCE_DIR) + "/sample-db/marram";
    Book book = Book::in_memory("office");
    const auto outcome = import_folder(book, season, act_at_noon());
    REQUIRE(all_lines(outcome.refusals()) == "");
    TempFolder out;
    REQUIRE(all_lines(export_folder(book, out.in("first")).refusals()) == "");
    Book again = Book::in_memory("office");
    const auto back = import_folder(again, out.in("first"), act_at_noon());
    REQUIRE(all_lines(back.refusals()) == "");
    CHECK(back->added == outcome->added);
    REQUIRE(export_folder(again, out.in("second")).ok());
    CHECK(files_of(out.in("first")) == files_of(out.in("second")));
    const auto twice = import_folder(book, out.in("first"), act_at_noon());
    REQUIRE(all_lines(twice.refusals()) == "");
    CHECK(twice->added_in_all() == 0);
    CHECK(all_lines(outcome->notes).find("80 m outside") != std::string::npos);
}
