// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/upgrade.h"

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "model/book/journal.h"
#include "model/book/journal_check.h"
#include "model/book/schema.h"
#include "tests/support/raw_book.h"
#include "tests/support/temp_folder.h"
#include "tests/support/tiny_season.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

/// A book as an earlier version of the program left it.
struct OldBook {
    int tables;
    TempFolder folder;
    std::string path = folder.file("marram.sbook");
    explicit OldBook(int version) : tables(version) {
        std::ifstream page(SPOILBOOK_SOURCE_DIR "/tests/unit/book/books/tables-" + std::to_string(version) +
                           ".sql");
        std::stringstream text;
        text << page.rdbuf();
        RawBook(path).run(text.str());
    }
    [[nodiscard]] std::string version() const { return RawBook(path).ask_one("PRAGMA user_version"); }
    [[nodiscard]] std::string kept() const { return path + "-tables-" + std::to_string(tables); }
};

/// A version whose book is kept for these tests.
int any_version() {
    return GENERATE(range(1, int(book_schema_version)));
}

std::string this_version() {
    return std::to_string(book_schema_version);
}

}  // namespace

TEST_CASE("a book of an older program is upgraded by the next writer, after a backup beside it") {
    OldBook old(any_version());
    REQUIRE(old.version() == std::to_string(old.tables));
    {
        auto opened = Book::open_to_write(old.path, "wheelhouse", by("Ana", 500));
        Book& book = opened.value();
        CHECK(old.version() == this_version());
        CHECK_FALSE(check_journal(book));
        log_row(book, by("Ana", 501), "tug", {{"name", "Kea"}});
        CHECK_FALSE(check_journal(book));
    }
    const OldBook untouched(old.tables);
    const auto kept = RawBook(old.kept()).ask("SELECT name, sql FROM sqlite_schema ORDER BY name");
    CHECK(kept == RawBook(untouched.path).ask("SELECT name, sql FROM sqlite_schema ORDER BY name"));
    CHECK(std::filesystem::status(old.kept()).permissions() ==
          (std::filesystem::perms::owner_read | std::filesystem::perms::owner_write));
}

TEST_CASE("an upgraded book has the tables of a new one to the letter, and all its rows") {
    OldBook old(any_version());
    const auto before = Book::open_to_read(old.path);
    const auto rows = all_rows(*before);
    const auto head = journal_state(*before).head;
    auto opened = Book::open_to_write(old.path, "wheelhouse", by("Ana", 500));
    Book& book = opened.value();
    CHECK(same_rows(all_rows(book), rows));
    CHECK(journal_state(book).head == head);
    CHECK(book.rows(kind("tug")).size() == 1);
}

TEST_CASE("a reader reads an older book without changing it") {
    OldBook old(any_version());
    const auto size = std::filesystem::file_size(old.path);
    const auto opened = Book::open_to_read(old.path);
    const Book& book = opened.value();
    CHECK_FALSE(check_journal(book));
    for (const auto& kind : all_kinds()) {
        CAPTURE(kind.name);
        // One row of every kind that there was; the one that was struck out is not among them.
        CHECK(book.rows(kind, true).size() == (kind.since <= old.tables ? 1 : 0));
    }
    CHECK(old.version() == std::to_string(old.tables));
    CHECK(std::filesystem::file_size(old.path) == size);
    CHECK_FALSE(std::filesystem::exists(old.kept()));
}

TEST_CASE("what an older program logged can be taken back after the upgrade") {
    OldBook old(any_version());
    auto opened = Book::open_to_write(old.path, "wheelhouse", by("Ana", 500));
    Book& book = opened.value();
    const auto tally = book.rows(kind("tally"), true).at(0);
    REQUIRE(tally.struck);
    undo(book, by("Ben", 501)).value();
    CHECK(book.row(kind("tally"), tally.id)->struck == false);
    CHECK_FALSE(check_journal(book));
}

TEST_CASE("an older book that is not intact is not upgraded, and stays as it is") {
    OldBook old(any_version());
    RawBook(old.path).run("UPDATE tug SET name = 'Weka'");
    const auto refused = Book::open_to_write(old.path, "wheelhouse", by("Ana", 500));
    REQUIRE_FALSE(refused);
    CHECK(refused.refusals().front().code == "backup-not-intact");
    CHECK(old.version() == std::to_string(old.tables));
}

TEST_CASE("a book whose version was set back from outside is refused, and the check names the file") {
    TempFolder folder;
    const auto path = folder.file("marram.sbook");
    log_tiny_season(*Book::create(path, "wheelhouse"));
    RawBook(path).run("PRAGMA user_version = 0");
    const auto bad = check_journal(*Book::open_to_read(path));
    REQUIRE(bad);
    CHECK(bad->table == "(the file)");
}
