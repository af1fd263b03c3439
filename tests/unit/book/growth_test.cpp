// SPDX-License-Identifier: GPL-3.0-or-later
#include <sqlite3.h>

#include <catch2/catch.hpp>
#include <set>

#include "model/book/history.h"
#include "model/book/inside.h"
#include "model/book/journal.h"
#include "tests/support/tiny_season.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

/// Listens to a book's connection: every statement that walked a whole table or index.
class WholeWalks {
 public:
    explicit WholeWalks(Book& book) : db_(book.inside().db->getHandle()) {
        sqlite3_trace_v2(db_, SQLITE_TRACE_PROFILE, heard, this);
    }
    ~WholeWalks() { sqlite3_trace_v2(db_, 0, nullptr, nullptr); }
    WholeWalks(const WholeWalks&) = delete;
    WholeWalks& operator=(const WholeWalks&) = delete;

    std::set<std::string> statements;
    int asked = 0;

 private:
    static int heard(unsigned, void* to, void* statement, void*) {
        auto& walks = *static_cast<WholeWalks*>(to);
        auto* ran = static_cast<sqlite3_stmt*>(statement);
        ++walks.asked;
        if (sqlite3_stmt_status(ran, SQLITE_STMTSTATUS_FULLSCAN_STEP, 1) > 1)
            walks.statements.insert(sqlite3_sql(ran));
        return 0;
    }
    sqlite3* db_;
};

}  // namespace

TEST_CASE("nothing that is done while logging walks a whole table, however long the book") {
    Book book = Book::in_memory("wheelhouse");
    const auto first = log_tiny_season(book);
    sign_shift(book, first.shift);
    for (int i = 0; i < 50; ++i)  // so that a walk would show
        log_row(book, by("Ben", 730 + i), "shift", {{"shift", "B" + std::to_string(i)}, {"signed_at", 1}});
    {
        const WholeWalks heard(book);
        CHECK(book.rows(kind("shift")).size() == 51);
        CHECK(heard.statements.size() == 1);
    }
    const WholeWalks walks(book);
    const auto season = log_tiny_season(book, "Cy");
    set_field(book, by("Cy", 900), "trip", season.trip, "remarks", std::string("calm")).value();
    set_field(book, by("Cy", 901), "trip", first.trip, "remarks", std::string("calm")).value();
    set_field(book, by("Cy", 902, "misread"), "trip", first.trip, "returned", time_of(morning(1))).value();
    strike_row(book, by("Cy", 903, "twice"), "load", first.load).value();
    undo(book, by("Cy", 904)).value();  // passes over two corrections, to what was filled after signing
    set_field(book, by("Cy", 905), "trip", season.trip, "remarks", std::string("swell")).value();
    undo(book, by("Cy", 906)).value();
    redo(book, by("Cy", 907)).value();
    sign_shift(book, season.shift, "Cy");
    CHECK(book.labelled(kind("trip"), "T1"));
    CHECK(history(book, kind("trip"), first.trip).size() == 4);
    CHECK(journal_state(book).devices.size() == 1);
    book.change(by("Cy", 908),
                [](Change& change) -> Checked<Done> {
                    change.keep("a track").value();
                    return Done{};
                })
        .value();
    CHECK(walks.asked > 100);
    for (const auto& statement : walks.statements)
        FAIL_CHECK(statement);
}
