// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "tests/support/how_many.h"
#include "tests/unit/folder/any_book.h"
#include "tests/unit/folder/folder_support.h"

using namespace spoilbook;
using namespace spoilbook::test;

TEST_CASE("any book written out and read again has the same rows", "[folder]") {
    for (unsigned seed = 1; seed <= static_cast<unsigned>(tests::how_many(60)); ++seed) {
        INFO("seed " << seed);
        const Book book = any_book(seed);
        TempFolder out;
        const auto first = export_folder(book, out.in("first"));
        REQUIRE(all_lines(first.refusals()) == "");
        CHECK(all_lines(first->notes) == "");
        Book again = Book::in_memory("office");
        REQUIRE(all_lines(import_folder(again, out.in("first"), act_at_noon()).refusals()) == "");
        for (const Kind& kind : all_kinds()) {
            INFO(kind.name);
            CHECK(rows_by_name(book, kind) == rows_by_name(again, kind));
        }
        REQUIRE(export_folder(again, out.in("second")).ok());
        CHECK(files_of(out.in("first")) == files_of(out.in("second")));
        const auto twice = import_folder(again, out.in("first"), act_at_noon());
        REQUIRE(all_lines(twice.refusals()) == "");
        CHECK(twice->added_in_all() == 0);
    }
}
