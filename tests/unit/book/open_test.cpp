// SPDX-License-Identifier: GPL-3.0-or-later
#include <sqlite3.h>
#include <sys/stat.h>

#include <catch2/catch.hpp>
#include <fstream>

#include "model/book/book_error.h"
#include "model/book/journal.h"
#include "model/book/journal_check.h"
#include "model/book/lock_file.h"
#include "model/book/open.h"
#include "model/book/snapshot.h"
#include "tests/support/temp_folder.h"
#include "tests/support/tiny_season.h"

using namespace spoilbook;
using namespace spoilbook::tests;
namespace fs = std::filesystem;

namespace {

void run_outside(const std::string& path, const std::string& sql) {
    sqlite3* db = nullptr;
    REQUIRE(sqlite3_open(path.c_str(), &db) == SQLITE_OK);
    char* why = nullptr;
    sqlite3_exec(db, sql.c_str(), nullptr, nullptr, &why);
    INFO(sql << ": " << (why != nullptr ? why : ""));
    CHECK(why == nullptr);
    sqlite3_free(why);
    sqlite3_close(db);
}

std::vector<std::string> files_in(const fs::path& folder) {
    std::vector<std::string> names;
    for (const auto& file : fs::directory_iterator(folder))
        names.push_back(file.path().filename());
    std::sort(names.begin(), names.end());
    return names;
}

mode_t mode_of(const std::string& path) {
    struct stat facts {};
    REQUIRE(stat(path.c_str(), &facts) == 0);
    return facts.st_mode & 0777;
}

}  // namespace

TEST_CASE("the office is refused while the wheelhouse writes, and is told who and since when") {
    const TempFolder folder;
    const auto path = folder.file("marram.sbook");
    Book::create(path, "wheelhouse").value();
    auto writer = Book::open_to_write(path, "wheelhouse", by("Ana"));
    REQUIRE(writer);
    const auto second = Book::open_to_write(path, "office", by("Ben", 5));
    REQUIRE_FALSE(second);
    CHECK(second.refusals().front().code == "book-in-use");
    CHECK(second.refusals().front().what ==
          "the book is open for writing: Ana on wheelhouse since 2025-03-03T06:00:00Z");
}

TEST_CASE("a link to a book is the same book: it is locked as well") {
    const TempFolder folder;
    const auto path = folder.file("marram.sbook");
    const auto held = Book::create(path, "wheelhouse");
    fs::create_symlink(path, folder.file("other.sbook"));
    const auto second = Book::open_to_write(folder.file("other.sbook"), "office", by("Ben"));
    REQUIRE_FALSE(second);
    CHECK(second.refusals().front().code == "book-in-use");
}

TEST_CASE("a reader reads while another writes, and sees what was logged since") {
    const TempFolder folder;
    const auto path = folder.file("marram.sbook");
    auto writer = Book::create(path, "wheelhouse");
    log_tiny_season(*writer);
    auto reader = Book::open_to_read(path);
    REQUIRE(reader);
    CHECK(reader->rows(kind("trip")).size() == 1);
    log_row(*writer, by("Ana", 200), "trip", {{"trip", "T2"}});
    CHECK(reader->rows(kind("trip")).size() == 2);
    {
        const Snapshot still(*reader);
        CHECK(reader->rows(kind("trip")).size() == 2);
        log_row(*writer, by("Ana", 201), "trip", {{"trip", "T3"}});
        CHECK(reader->rows(kind("trip")).size() == 2);
        CHECK(journal_state(*reader).entries == 7);
    }
    CHECK(reader->rows(kind("trip")).size() == 3);
    CHECK_FALSE(check_journal(*reader));
}

TEST_CASE("a reader cannot change the book") {
    const TempFolder folder;
    const auto path = folder.file("marram.sbook");
    log_tiny_season(*Book::create(path, "wheelhouse"));
    auto reader = Book::open_to_read(path);
    const auto refused = set_field(*reader, by("Ben"), "barge", Id{}, "name", std::string("Tuatua"));
    REQUIRE_FALSE(refused);
    CHECK(refused.refusals().front().code == "read-only");
}

TEST_CASE("a book of a newer program is refused, for reading and for writing") {
    const TempFolder folder;
    const auto path = folder.file("marram.sbook");
    Book::create(path, "wheelhouse").value();
    run_outside(path, "PRAGMA user_version = 9999");
    const auto read = Book::open_to_read(path);
    REQUIRE_FALSE(read);
    CHECK(read.refusals().front().code == "newer-book");
    const auto write = Book::open_to_write(path, "wheelhouse", by("Ana"));
    REQUIRE_FALSE(write);
    CHECK(write.refusals().front().code == "newer-book");
}

TEST_CASE("another database, a text, an empty file and nothing are not books, and stay as they are") {
    const TempFolder folder;
    const auto other = folder.file("other.sqlite");
    run_outside(other, "CREATE TABLE shift (id)");
    const auto text = folder.file("notes.txt");
    std::ofstream(text) << std::string(5000, 'n');
    const auto empty = folder.file("empty.sbook");
    std::ofstream{empty};
    const auto before = fs::file_size(other);
    for (const auto& path : {other, text, empty}) {
        CAPTURE(path);
        const auto read = Book::open_to_read(path);
        REQUIRE_FALSE(read);
        CHECK(read.refusals().front().code == "not-a-book");
        const auto write = Book::open_to_write(path, "wheelhouse", by("Ana"));
        REQUIRE_FALSE(write);
        CHECK(write.refusals().front().code == "not-a-book");
    }
    CHECK(Book::open_to_read(folder.file("none.sbook")).refusals().front().code == "no-such-book");
    CHECK(Book::open_to_write(folder.file("none.sbook"), "w", by("Ana")).refusals().front().code ==
          "no-such-book");
    CHECK(fs::file_size(other) == before);
    CHECK(files_in(folder.path()) == std::vector<std::string>{"empty.sbook", "notes.txt", "other.sqlite"});
}

TEST_CASE("a book whose tables were changed from outside is not written any more") {
    const TempFolder folder;
    const auto path = folder.file("marram.sbook");
    Book::create(path, "wheelhouse").value();
    run_outside(path, "CREATE TRIGGER shift AFTER INSERT ON \"shift\" BEGIN DELETE FROM trip; END");
    const auto refused = Book::open_to_write(path, "wheelhouse", by("Ana"));
    REQUIRE_FALSE(refused);
    CHECK(refused.refusals().front().code == "changed-from-outside");
}

TEST_CASE("a book, its WAL and its lock are for their owner only, and closing leaves one file") {
    const TempFolder folder;
    const auto path = folder.file("marram.sbook");
    {
        auto book = Book::create(path, "wheelhouse");
        log_tiny_season(*book);
        for (const char* tail : {"", "-wal", "-shm", "-lock"})
            CHECK(mode_of(path + tail) == 0600);
    }
    CHECK(files_in(folder.path()) == std::vector<std::string>{"marram.sbook"});
}

TEST_CASE("the writer's last entries are in the book's file even if a reader stays open longer") {
    const TempFolder folder;
    const auto path = folder.file("marram.sbook");
    auto writer = std::make_unique<Book>(std::move(*Book::create(path, "wheelhouse")));
    auto reader = Book::open_to_read(path);
    CHECK(reader->rows(kind("trip")).empty());
    log_tiny_season(*writer);
    writer.reset();
    fs::copy_file(path, folder.file("carried.sbook"));  // as a person would, without the WAL
    auto carried = Book::open_to_read(folder.file("carried.sbook"));
    REQUIRE(carried);
    CHECK(carried->rows(kind("trip")).size() == 1);
}

TEST_CASE("network shares are refused, disks of the machine are not") {
    // linux/magic.h, statfs(2) (MEM: numbers of the Linux kernel's own header)
    for (const long share : {0x6969L, 0xFF534D42L, 0xFE534D42L, 0x517BL, 0x01021997L, 0x00C36400L})
        CHECK_FALSE(why_not_on(share).empty());
    for (const long disk : {0xEF53L /* ext4 */, 0x9123683EL /* btrfs */, 0x58465342L /* xfs */, 0x01021994L})
        CHECK(why_not_on(disk).empty());
}

TEST_CASE("a name that is taken is refused when a book is made, and the file stays") {
    const TempFolder folder;
    const auto path = folder.file("marram.sbook");
    std::ofstream(path) << "mine";
    CHECK(Book::create(path, "wheelhouse").refusals().front().code == "already-there");
    CHECK(make_book(path, "wheelhouse", [](Book&) { return Done{}; }).refusals().front().code ==
          "already-there");
    CHECK(fs::file_size(path) == 4);
}

TEST_CASE("a machine without a name cannot write") {
    const TempFolder folder;
    CHECK(Book::create(folder.file("a.sbook"), "").refusals().front().code == "no-device");
    CHECK(files_in(folder.path()).empty());
}

TEST_CASE("a book that cannot be filled is not made at all") {
    const TempFolder folder;
    const auto path = folder.file("marram.sbook");
    const auto refused = make_book(path, "wheelhouse", [](Book& book) -> Checked<Done> {
        log_tiny_season(book);
        return Refusal{"bad-row", "trips.csv line 9", "no such load", "name one"};
    });
    CHECK(refused.refusals().front().code == "bad-row");
    CHECK(files_in(folder.path()).empty());
    CHECK_THROWS(make_book(path, "wheelhouse", [](Book&) -> Checked<Done> { throw std::bad_alloc(); }));
    CHECK(files_in(folder.path()).empty());
    REQUIRE(make_book(path, "wheelhouse", [](Book& book) -> Checked<Done> {
        log_tiny_season(book);
        return Done{};
    }));
    CHECK(files_in(folder.path()) == std::vector<std::string>{"marram.sbook"});
    CHECK_FALSE(check_journal(*Book::open_to_read(path)));
}

TEST_CASE("a book in a folder that may not be written is read as it stands") {
    const TempFolder folder;
    fs::create_directory(folder.file("stick"));
    const auto path = folder.file("stick/100 % sure?.sbook");
    log_tiny_season(*Book::create(path, "wheelhouse"));
    fs::permissions(path, fs::perms::owner_read);
    fs::permissions(folder.file("stick"), fs::perms::owner_read | fs::perms::owner_exec);
    auto reader = Book::open_to_read(path);
    REQUIRE(reader);
    CHECK(reader->rows(kind("trip")).size() == 1);
    if (geteuid() != 0) {  // root may write anything
        CHECK(Book::open_to_write(path, "office", by("Ben")).refusals().front().code == "read-only");
    }
    fs::permissions(folder.file("stick"), fs::perms::owner_all);
}
