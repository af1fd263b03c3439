// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/backup.h"

#include <sys/stat.h>

#include <atomic>
#include <catch2/catch.hpp>
#include <fstream>
#include <thread>

#include "model/book/journal.h"
#include "model/book/journal_check.h"
#include "model/book/open.h"
#include "tests/support/full_book.h"
#include "tests/support/raw_book.h"
#include "tests/support/temp_folder.h"

using namespace spoilbook;
using namespace spoilbook::tests;
namespace fs = std::filesystem;

TEST_CASE("a backup is one file, for its owner only, intact, and opens for writing later") {
    const TempFolder folder;
    const auto to = folder.file("backup.sbook");
    auto book = Book::create(folder.file("marram.sbook"), "wheelhouse");
    log_one_of_everything(*book);
    REQUIRE(back_up(*book, to));
    struct stat facts {};
    REQUIRE(stat(to.c_str(), &facts) == 0);
    CHECK((facts.st_mode & 0777) == 0600);
    CHECK(facts.st_nlink == 1);
    for (const char* tail : {"-wal", "-shm", "-journal", "-lock"})
        CHECK_FALSE(fs::exists(to + tail));
    auto copy = Book::open_to_write(to, "office", by("Ben"));
    REQUIRE(copy);
    CHECK(same_rows(all_rows(*copy), all_rows(*book)));
    CHECK(journal_state(*copy).head == journal_state(*book).head);
    log_row(*copy, by("Ben", 900), "tug", {{"name", "Kea"}});
    CHECK_FALSE(check_journal(*copy));
}

TEST_CASE("a backup does not take the place of another file") {
    const TempFolder folder;
    const auto to = folder.file("backup.sbook");
    std::ofstream(to) << "mine";
    auto book = Book::create(folder.file("marram.sbook"), "wheelhouse");
    CHECK(back_up(*book, to).refusals().front().code == "already-there");
    CHECK(back_up(*book, folder.file("no/such/folder.sbook")).refusals().front().code == "cannot-write");
    CHECK(fs::file_size(to) == 4);
}

TEST_CASE("a file of a person's own beside a backup or a new book stays, whatever its name") {
    const TempFolder folder;
    const auto own = [&](const std::string& name) {
        std::ofstream(folder.file(name)) << "mine";
        return folder.file(name);
    };
    const auto beside_backup = own("backup.sbook-part");
    const auto beside_book = own("marram.sbook-part");
    REQUIRE(make_book(folder.file("marram.sbook"), "wheelhouse", [](Book& book) -> Checked<Done> {
        log_tiny_season(book);
        return Done{};
    }));
    const auto book = Book::open_to_read(folder.file("marram.sbook"));
    REQUIRE(back_up(*book, folder.file("backup.sbook")));
    CHECK(fs::file_size(beside_backup) == 4);
    CHECK(fs::file_size(beside_book) == 4);
}

TEST_CASE("a book that was changed from outside gives no backup") {
    const TempFolder folder;
    const auto path = folder.file("marram.sbook");
    auto book = Book::create(path, "wheelhouse");
    log_tiny_season(*book);
    RawBook(path).run("UPDATE barge SET name = 'x'");
    const auto before = std::distance(fs::directory_iterator(folder.path()), fs::directory_iterator());
    const auto refused = back_up(*book, folder.file("backup.sbook"));
    REQUIRE_FALSE(refused);
    CHECK(refused.refusals().front().code == "backup-not-intact");
    CHECK_FALSE(fs::exists(folder.file("backup.sbook")));
    CHECK(std::distance(fs::directory_iterator(folder.path()), fs::directory_iterator()) == before);
}

TEST_CASE("a backup taken while the wheelhouse goes on writing is whole") {
    const TempFolder folder;
    const auto path = folder.file("marram.sbook");
    auto writer = Book::create(path, "wheelhouse");
    log_one_of_everything(*writer);
    std::atomic<bool> enough = false;
    std::thread wheelhouse([&] {
        for (int i = 0; !enough; ++i)
            log_row(*writer, by("Ana", 100 + i), "tug", {{"name", "T" + std::to_string(i)}});
    });
    for (int i = 0; i < 10; ++i) {
        const auto to = folder.file("backup" + std::to_string(i) + ".sbook");
        const auto reader = Book::open_to_read(path);
        CHECK(back_up(*reader, to));  // which checks it
    }
    enough = true;
    wheelhouse.join();
    CHECK_FALSE(check_journal(*writer));
}
