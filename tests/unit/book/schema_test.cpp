// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/schema.h"

#include <catch2/catch.hpp>
#include <set>

#include "model/book/journal.h"
#include "tests/support/full_book.h"
#include "tests/support/raw_book.h"
#include "tests/support/temp_folder.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

struct BookFile {
    TempFolder folder;
    std::string path = folder.file("marram.sbook");
    BookFile() { log_one_of_everything(*Book::create(path, "wheelhouse")); }
};

}  // namespace

TEST_CASE("every table of a book is a record, the journal, derived from it, or stored bytes") {
    BookFile file;
    RawBook raw(file.path);
    std::set<std::string> known{"journal", "entry_row", "stored_file", "stored_chunk"};
    for (const auto& kind : all_kinds())
        known.insert(kind.name);
    std::set<std::string> found;
    for (const auto& row : raw.ask("SELECT name FROM sqlite_schema WHERE type = 'table'"))
        found.insert(row[0]);
    CHECK(found == known);
    CHECK(raw.ask("SELECT name FROM sqlite_schema WHERE type NOT IN ('table', 'index')").empty());
}

TEST_CASE("every table is STRICT, and its key cannot be blank") {
    BookFile file;
    RawBook raw(file.path);
    for (const auto& row : raw.ask("SELECT name, strict FROM pragma_table_list WHERE schema = 'main' "
                                   "AND name NOT LIKE 'sqlite_%'")) {
        CAPTURE(row[0]);
        CHECK(row[1] == "1");
    }
}

TEST_CASE("a record table has a 16-byte key of its own, and every other column may be blank") {
    BookFile file;
    RawBook raw(file.path);
    for (const auto& kind : all_kinds()) {
        CAPTURE(kind.name);
        const auto columns = raw.ask(
            "SELECT name, type, \"notnull\", ifnull(dflt_value, ''), pk, hidden "
            "FROM pragma_table_xinfo('" +
            kind.name + "')");
        REQUIRE(columns.size() == kind.fields.size() + 2);
        CHECK(columns[0] == std::vector<std::string>{"uuid", "BLOB", "1", "", "1", "0"});
        for (std::size_t i = 1; i < columns.size(); ++i) {
            CAPTURE(columns[i][0]);
            CHECK(columns[i][2] == "0");   // may be NULL
            CHECK(columns[i][3].empty());  // has no DEFAULT
            CHECK(columns[i][4] == "0");
            CHECK(columns[i][5] == "0");  // is not generated
        }
        CHECK(columns[1][0] == "struck");
    }
}

TEST_CASE("a record table has no UNIQUE beside its key and no foreign key that acts") {
    BookFile file;
    RawBook raw(file.path);
    for (const auto& kind : all_kinds()) {
        CAPTURE(kind.name);
        CHECK(raw.ask_one("SELECT count(*) FROM pragma_index_list('" + kind.name +
                          "') WHERE \"unique\" = 1") == "1");
        std::size_t references = 0;
        for (const auto& key : raw.ask("SELECT \"from\", \"to\", on_update, on_delete FROM "
                                       "pragma_foreign_key_list('" +
                                       kind.name + "')")) {
            CHECK(key[1] == "uuid");
            CHECK(key[2] == "NO ACTION");
            CHECK(key[3] == "NO ACTION");
            ++references;
        }
        const auto wanted = std::count_if(kind.fields.begin(), kind.fields.end(), [](const Field& field) {
            return field.type == FieldType::reference;
        });
        CHECK(static_cast<std::ptrdiff_t>(references) == wanted);
    }
}

TEST_CASE("every row of a record table may be all blank but its key") {
    auto book = Book::in_memory("wheelhouse");
    for (const auto& kind : all_kinds()) {
        CAPTURE(kind.name);
        CHECK_NOTHROW(log_row(book, by("Ana"), kind.name, {}));
    }
}

TEST_CASE("the book itself refuses what lies outside a field's range or choices, at both ends") {
    auto book = Book::in_memory("wheelhouse");
    const auto takes = [&](const Kind& kind, std::size_t field, const Value& value) {
        return book
            .change(by("Ana"),
                    [&](Change& change) -> Checked<Done> {
                        std::vector<Value> values(kind.fields.size());
                        values[field] = value;
                        change.insert(kind, values);
                        return Done{};
                    })
            .ok();
    };
    for (const auto& kind : all_kinds()) {
        for (std::size_t i = 0; i < kind.fields.size(); ++i) {
            const Field& field = kind.fields[i];
            CAPTURE(kind.name, field.name);
            if (field.type == FieldType::choice) {
                for (const auto& choice : field.choices)
                    CHECK(takes(kind, i, choice));
                CHECK_FALSE(takes(kind, i, std::string("no such choice")));
            }
            if (field.type == FieldType::number && field.bounded) {
                CHECK(takes(kind, i, field.low));
                CHECK(takes(kind, i, field.high));
                CHECK_FALSE(takes(kind, i, std::nextafter(field.low, -1e300)));
                CHECK_FALSE(takes(kind, i, std::nextafter(field.high, 1e300)));
                CHECK_FALSE(takes(kind, i, std::string("many")));
            }
            if (field.type == FieldType::integer && field.bounded) {
                CHECK(takes(kind, i, static_cast<std::int64_t>(field.low)));
                CHECK_FALSE(takes(kind, i, static_cast<std::int64_t>(field.low) - 1));
                CHECK_FALSE(takes(kind, i, static_cast<std::int64_t>(field.high) + 1));
            }
        }
    }
}
