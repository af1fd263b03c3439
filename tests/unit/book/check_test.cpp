// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "model/book/digest.h"
#include "model/book/journal.h"
#include "model/book/journal_check.h"
#include "tests/support/full_book.h"
#include "tests/support/raw_book.h"
#include "tests/support/temp_folder.h"

using namespace spoilbook;
using namespace spoilbook::tests;
namespace fs = std::filesystem;

namespace {

/// One book on disk; each deed from outside is judged and then taken back by putting the first file again.
class Outside {
 public:
    Outside() {
        log_one_of_everything(*Book::create(good_, "wheelhouse"));
        put_back();
    }
    std::optional<FirstBad> after(const std::vector<std::string>& deeds) {
        {
            RawBook raw(path_);
            for (const auto& deed : deeds)
                raw.run(deed);
        }
        auto bad = check_journal(Book::open_to_read(path_).value());
        put_back();
        return bad;
    }
    std::vector<std::vector<std::string>> ask(const std::string& sql) { return RawBook(path_).ask(sql); }

 private:
    void put_back() {
        for (const char* tail : {"-wal", "-shm"})
            fs::remove(path_ + tail);
        fs::copy_file(good_, path_, fs::copy_options::overwrite_existing);
    }
    TempFolder folder_;
    std::string good_ = folder_.file("good.sbook");
    std::string path_ = folder_.file("marram.sbook");
};

/// A value of the column's type that is not there now.
std::string other_value(const std::string& type, const std::string& column) {
    const std::string name = "\"" + column + "\"";
    if (type == "TEXT") return "ifnull(" + name + ", '') || 'x'";
    if (type == "BLOB") return "randomblob(16)";
    return "ifnull(" + name + ", 0) + 1";
}

/// What the check may call a table: a stored file is one thing in two tables.
bool names(const FirstBad& bad, const std::string& table) {
    if (table.rfind("stored_", 0) == 0) return bad.table.rfind("stored_", 0) == 0;
    return bad.table == table;
}

const char* all_tables = "SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY rowid";

}  // namespace

TEST_CASE("a book as the program left it is intact") {
    Outside book;
    CHECK_FALSE(book.after({}));
    CHECK_FALSE(book.after({"VACUUM"}));
    for (const auto& table : book.ask(all_tables)) {
        CAPTURE(table[0]);
        CHECK(book.ask("SELECT count(*) FROM \"" + table[0] + "\"")[0][0] != "0");
    }
}

TEST_CASE("a cell of any column of any table, changed from outside, is found and its table named") {
    Outside book;
    for (const auto& table : book.ask(all_tables)) {
        for (const auto& column : book.ask("SELECT name, type FROM pragma_table_info('" + table[0] + "')")) {
            const std::string deed = "UPDATE \"" + table[0] + "\" SET \"" + column[0] +
                                     "\" = " + other_value(column[1], column[0]) + " WHERE \"" + column[0] +
                                     "\" = (SELECT max(\"" + column[0] + "\") FROM \"" + table[0] +
                                     "\") OR \"" + column[0] + "\" IS NULL";
            CAPTURE(deed);
            const auto bad = book.after({deed});
            REQUIRE(bad);
            CAPTURE(bad->table, bad->what);
            CHECK(names(*bad, table[0]));
        }
    }
}

TEST_CASE("a value blanked from outside is found") {
    Outside book;
    for (const auto& kind : all_kinds()) {
        // The first field is filled in every kind; that each column is looked at is shown above.
        const auto bad =
            book.after({"UPDATE \"" + kind.name + "\" SET \"" + kind.fields.front().name + "\" = NULL"});
        CAPTURE(kind.name);
        REQUIRE(bad);
        CHECK(bad->table == kind.name);
    }
}

TEST_CASE("a row taken out of or put into any table from outside is found and its table named") {
    Outside book;
    for (const auto& table : book.ask(all_tables)) {
        const std::string name = "\"" + table[0] + "\"";
        const std::string which = table[0] == "entry_row"
                                      ? " WHERE seq = 3"
                                      : " WHERE rowid = (SELECT max(rowid) FROM " + name + ")";
        const auto gone = book.after({"DELETE FROM " + name + which});
        CAPTURE(table[0]);
        REQUIRE(gone);
        CHECK(names(*gone, table[0]));
    }
    for (const auto& kind : all_kinds()) {
        const std::string name = "\"" + kind.name + "\"";
        const auto more = book.after({"INSERT INTO " + name + " (uuid) VALUES (randomblob(16))"});
        CAPTURE(kind.name);
        REQUIRE(more);
        CHECK(more->table == kind.name);
        CHECK(more->what == "no entry wrote the row");
        const auto short_id = book.after({"INSERT INTO " + name + " (uuid) VALUES (randomblob(15))"});
        REQUIRE(short_id);
        CHECK(short_id->table == kind.name);
    }
}

TEST_CASE("the check says which row and which entry last wrote it") {
    Outside book;
    const auto bad = book.after({"UPDATE barge SET capacity_m3 = capacity_m3 + 1"});
    REQUIRE(bad);
    CHECK(bad->table == "barge");
    CHECK(bad->id == "Tuatua");
    CHECK(bad->what == "the row is not as its entries left it");
    const auto last = book.ask("SELECT max(seq) FROM journal WHERE kind = 'undo'")[0][0];
    CHECK(bad->entry == "wheelhouse:" + last);
}

TEST_CASE("an entry altered, dropped, swapped or forged is found in the journal") {
    Outside book;
    const std::string last = "(SELECT max(seq) FROM journal)";
    const std::vector<std::vector<std::string>> deeds{
        {"UPDATE journal SET why = 'x' WHERE seq = 3"},
        {"UPDATE journal SET who = 'Cy' WHERE seq = " + last},
        {"UPDATE journal SET at = at - 1 WHERE seq = 1"},
        {"UPDATE journal SET kind = 'import' WHERE seq = 4"},
        {"UPDATE journal SET kind = 'gift' WHERE seq = 4"},
        {"UPDATE journal SET materials = '{' WHERE seq = 4"},
        {"UPDATE journal SET seen = '{\"office\":1}' WHERE seq = 4"},
        {"UPDATE journal SET changeset = substr(changeset, 1, 20) WHERE seq = 4"},
        {"UPDATE journal SET changeset = x'' WHERE seq = 4"},
        {"DELETE FROM journal WHERE seq = " + last},
        {"DELETE FROM journal WHERE seq > 5"},
        {"DELETE FROM journal WHERE seq = 3"},
        {"DELETE FROM journal WHERE seq = 1"},
        {"DELETE FROM journal"},
        {"UPDATE journal SET seq = 9999 WHERE seq = 3", "UPDATE journal SET seq = 3 WHERE seq = 4",
         "UPDATE journal SET seq = 4 WHERE seq = 9999"},
        {"UPDATE journal SET stamp_ms = stamp_ms + 3600000 WHERE seq = 3"},
        {"INSERT INTO journal SELECT device, seq + 1, at, stamp_ms + 1, stamp_count, who, why, kind, "
         "takes_back, schema, x'', materials, seen, hash, hash FROM journal WHERE seq = " +
         last},
        {"INSERT INTO journal SELECT 'office', 1, at, stamp_ms, stamp_count, who, why, kind, takes_back, "
         "schema, changeset, materials, seen, prev, hash FROM journal WHERE seq = 1"},
    };
    for (const auto& deed : deeds) {
        const auto bad = book.after(deed);
        CAPTURE(deed.front());
        REQUIRE(bad);
        CAPTURE(bad->what);
        CHECK(bad->table == "journal");
    }
    CHECK(book.after({"DELETE FROM journal WHERE seq = 3"})->id == "wheelhouse:4");
    CHECK(book.after({"UPDATE journal SET why = 'x' WHERE seq = 3"})->id == "wheelhouse:3");
}

TEST_CASE("stored bytes changed, lost or added from outside are found") {
    Outside book;
    const std::string two = "(SELECT digest FROM stored_chunk WHERE n = 1)";
    const std::vector<std::vector<std::string>> deeds{
        {"DELETE FROM stored_chunk WHERE n = 1"},
        {"DELETE FROM stored_chunk"},
        {"DELETE FROM stored_file", "DELETE FROM stored_chunk"},
        {"UPDATE stored_chunk SET packed = x'00' WHERE n = 0"},
        {"UPDATE stored_chunk SET packed = (SELECT packed FROM stored_chunk WHERE digest <> " + two + ")"},
        {"UPDATE stored_chunk SET n = 5 WHERE n = 1"},
        {"UPDATE stored_chunk SET n = 5 - n WHERE digest = " + two},
        {"INSERT INTO stored_chunk VALUES (" + two + ", 2, x'28B52FFD2000010000')"},  // an empty zstd frame
        {"INSERT INTO stored_file VALUES ('" + std::string(64, '0') + "', 0, 0)"},
        {"INSERT INTO stored_chunk VALUES ('" + std::string(64, '0') + "', 0, x'00')"},
        {"UPDATE stored_file SET chunks = chunks + 1"},
        {"UPDATE stored_file SET bytes = 3"},
    };
    for (const auto& deed : deeds) {
        const auto bad = book.after(deed);
        CAPTURE(deed.front());
        REQUIRE(bad);
        CHECK(bad->table.rfind("stored_", 0) == 0);
    }
}

TEST_CASE("the index from rows to entries is held against the journal") {
    Outside book;
    const auto less = book.after({"DELETE FROM entry_row WHERE seq = 3"});
    REQUIRE(less);
    CHECK(less->table == "entry_row");
    const auto more = book.after({"INSERT INTO entry_row VALUES (randomblob(16), 'wheelhouse', 3)"});
    REQUIRE(more);
    CHECK(more->table == "entry_row");
    const auto odd = book.after({"INSERT INTO entry_row VALUES (x'00', 'wheelhouse', 3)"});
    REQUIRE(odd);
    CHECK(odd->table == "entry_row");
}

TEST_CASE("tables, views, triggers, indexes and statements of others are found and named") {
    Outside book;
    const auto named = [&](const std::vector<std::string>& deed) {
        CAPTURE(deed.front());
        const auto bad = book.after(deed);
        REQUIRE(bad);
        return bad->table;
    };
    CHECK(named({"CREATE TABLE notes (a)"}) == "notes");
    CHECK(named({"CREATE VIEW \"my trips\" AS SELECT * FROM trip"}) == "my trips");
    CHECK(named({"CREATE TRIGGER shift AFTER INSERT ON trip BEGIN SELECT 1; END"}) == "shift");
    CHECK(named({"CREATE INDEX quick ON trip (departed)"}) == "quick");
    CHECK(named({"DROP INDEX trip_by_trip"}) == "trip_by_trip");
    CHECK(named({"DROP TABLE track"}) == "track");
    CHECK(named({"ALTER TABLE trip ADD COLUMN mood TEXT"}) == "trip");
    CHECK(named({"ALTER TABLE trip RENAME COLUMN remarks TO notes"}) == "trip");
    CHECK(named({"ANALYZE"}).rfind("sqlite_stat", 0) == 0);
    CHECK(named({"PRAGMA writable_schema = ON",
                 "UPDATE sqlite_schema SET sql = replace(sql, 'BETWEEN 0 AND 30', 'BETWEEN 0 AND 99') "
                 "WHERE name = 'shift'"}) == "shift");
    CHECK(named({"PRAGMA user_version = 0"}) == "(the file)");
}

TEST_CASE("a row may be struck out in one way only") {
    Outside book;
    const auto bad = book.after({"UPDATE tally SET struck = 2"});
    REQUIRE(bad);
    CHECK(bad->table == "tally");
}

TEST_CASE("damaged bytes of the file are found or refused, wherever they are") {
    const TempFolder folder;
    const auto path = folder.file("marram.sbook");
    log_one_of_everything(*Book::create(path, "wheelhouse"));
    const auto size = fs::file_size(path);
    const auto copy = folder.file("copy.sbook");
    int found = 0;
    constexpr int places = 30;
    for (int i = 0; i < places; ++i) {
        fs::copy_file(path, copy, fs::copy_options::overwrite_existing);
        std::FILE* file = std::fopen(copy.c_str(), "r+b");
        REQUIRE(file != nullptr);
        std::fseek(file, static_cast<long>(size * (2U * static_cast<unsigned>(i) + 1) / (2U * places)),
                   SEEK_SET);
        const std::string garbage(64, static_cast<char>(0xA5));
        std::fwrite(garbage.data(), 1, garbage.size(), file);
        std::fclose(file);
        try {
            const auto book = Book::open_to_read(copy);
            if (!book || check_journal(*book)) ++found;
        } catch (const std::exception&) {
            ++found;
        }
    }
    // Most of this file are stored bytes; what hits the unused end of a page changes nothing that is said.
    CHECK(found > places / 2);
}
