// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "model/book/journal.h"
#include "model/logging/log_record.h"
#include "tests/support/tiny_season.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

struct Heron {
    Book book = Book::in_memory("heron");
    TinySeason tiny = log_tiny_season(book);
};

}  // namespace

TEST_CASE("a row without a label is changed by what it is, and no other is made", "[logging]") {
    Heron here;
    const Id tally = log_row(here.book, by("Ana", 90), "tally",
                             {{"load", here.tiny.load}, {"station", here.tiny.station}, {"count", 31.0}});
    const auto done =
        change_record(here.book, by("Ana", 91), kind("tally"), tally, {{"count", "32"}, {"load", "L1"}});
    REQUIRE(done.ok());
    CHECK(done->id == tally);
    CHECK_FALSE(done->made);
    CHECK(here.book.rows(kind("tally")).size() == 1);
    CHECK(field_of(here.book, "tally", tally, "count") == Value(32.0));
}

TEST_CASE("a change by what a row is is refused like one by its label", "[logging]") {
    Heron here;
    const auto entries = journal_state(here.book).entries;
    const auto refused = [&](const std::vector<FieldInput>& inputs) {
        const auto done = change_record(here.book, by("Ana", 90), kind("trip"), here.tiny.trip, inputs);
        return done ? std::string("written") : done.refusals().front().code;
    };
    CHECK(refused({{"departed", "2025-03-03T12:00Z"}, {"returned", "2025-03-03T11:00Z"}}) ==
          "end-before-start");
    CHECK(refused({{"load", "L99"}}) == "unknown-reference");
    CHECK(refused({{"trip", ""}}) == "blank-id");
    CHECK(refused({{"tug", "x"}, {"tug", "y"}}) == "twice");
    const auto gone = change_record(here.book, by("Ana", 90), kind("trip"), here.tiny.load, {{"trip", "T9"}});
    REQUIRE_FALSE(gone.ok());
    CHECK(gone.refusals().front().code == "no-such-row");
    CHECK(journal_state(here.book).entries == entries);
}
