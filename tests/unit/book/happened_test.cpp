// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/happened.h"

#include <catch2/catch.hpp>

#include "tests/support/full_book.h"
#include "tests/support/temp_folder.h"

using namespace spoilbook;
using namespace spoilbook::tests;

TEST_CASE("read at an instant, a book holds what had begun by then, both ends included") {
    auto book = Book::in_memory("wheelhouse");
    const Id early =
        log_row(book, by("Ana", 1), "trip", {{"trip", "T-1"}, {"departed", time_of(morning(10))}});
    const Id late =
        log_row(book, by("Ana", 2), "trip", {{"trip", "T-2"}, {"departed", time_of(morning(11))}});
    const Id unknown = log_row(book, by("Ana", 3), "trip", {{"trip", "T-3"}});
    const auto read = happened_by(book, morning(10));
    CHECK_FALSE(read.row(kind("trip"), early)->struck);
    CHECK(read.row(kind("trip"), late)->struck);
    CHECK_FALSE(read.row(kind("trip"), unknown)->struck);
    CHECK_FALSE(book.row(kind("trip"), late)->struck);  // the book itself is as it was
}

TEST_CASE("what had not ended by then has no end, and a factor in force later stays") {
    auto book = Book::in_memory("wheelhouse");
    const Id trip =
        log_row(book, by("Ana", 1), "trip",
                {{"trip", "T-1"}, {"departed", time_of(morning(10))}, {"returned", time_of(morning(90))}});
    const Id factor =
        log_row(book, by("Ana", 2), "factor", {{"from", time_of(morning(500))}, {"value", 1.3}});
    const auto read = happened_by(book, morning(60));
    CHECK(is_blank(read.row(kind("trip"), trip)->values[*kind("trip").index_of("returned")]));
    CHECK_FALSE(read.row(kind("factor"), factor)->struck);
    CHECK_FALSE(is_blank(read.row(kind("factor"), factor)->values[*kind("factor").index_of("from")]));
}

TEST_CASE("what the book knew then comes first, what had happened after it") {
    auto book = Book::in_memory("wheelhouse");
    const Id trip =
        log_row(book, by("Ana", 1), "trip", {{"trip", "T-1"}, {"departed", time_of(morning(10))}});
    set_field(book, by("Ana", 2), "trip", trip, "departed", time_of(morning(40))).value();
    CHECK(happened_by(book, morning(20)).row(kind("trip"), trip)->struck);
    const KnownAt first{EntryName{"wheelhouse", 1}, std::nullopt};
    CHECK_FALSE(happened_by(book, morning(20), first).row(kind("trip"), trip)->struck);
}

TEST_CASE("a copy of what was known reads stored files from the book's own file") {
    TempFolder folder;
    const auto path = folder.file("marram.sbook");
    auto made = Book::create(path, "wheelhouse");
    log_one_of_everything(*made);
    std::string digest;
    made->change(by("Ana", 900),
                 [&](Change& change) -> Checked<Done> {
                     digest = change.keep("a short track").value();
                     return Done{};
                 })
        .value();
    const KnownAt last{std::nullopt, morning(100000)};
    CHECK(known_at(*made, last).material(digest) == "a short track");
    CHECK(happened_by(*made, morning(100000)).material(digest) == "a short track");
}
