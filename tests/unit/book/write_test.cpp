// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "model/book/change.h"
#include "model/book/changeset.h"
#include "model/book/history.h"
#include "model/book/journal.h"
#include "model/book/journal_check.h"
#include "model/book/new_id.h"
#include "model/book/schema.h"
#include "tests/support/tiny_season.h"

using namespace spoilbook;
using namespace spoilbook::tests;

TEST_CASE("what is logged stands in the book and in the journal, with who, when and why") {
    auto book = Book::in_memory("wheelhouse");
    const Id barge = log_row(book, by("Ana", 7, "her new number"), "barge", {{"name", "Pipi"}});
    const auto entry = find_entry(book, {"wheelhouse", 1});
    REQUIRE(entry);
    CHECK(entry->who == "Ana");
    CHECK(entry->why == "her new number");
    CHECK(entry->at == morning(7));
    CHECK(entry->kind == EntryKind::change);
    CHECK(entry->prev == std::string(32, '\0'));
    const auto touch = find_touch(entry->changeset, "barge", barge);
    REQUIRE(touch);
    CHECK(touch->deed == Touch::Deed::insert);
    CHECK(touch->after[first_field_column] == Value{"Pipi"});
}

TEST_CASE("a change that is refused half way leaves neither row nor entry") {
    auto book = Book::in_memory("wheelhouse");
    log_tiny_season(book);
    const auto before = all_rows(book);
    const auto head = journal_state(book).head;
    const auto refused = book.change(by("Ana", 200), [&](Change& change) -> Checked<Done> {
        change.insert(kind("barge"), values_of(kind("barge"), {{"name", "Tuatua"}}));
        change.keep("a track").value();
        return Refusal{"bad-row", "here", "no", "yes"};
    });
    CHECK_FALSE(refused);
    CHECK(same_rows(all_rows(book), before));
    CHECK(journal_state(book).head == head);
    CHECK_FALSE(check_journal(book));
}

TEST_CASE("a change that fails half way leaves neither row nor entry, and the next one lands") {
    auto book = Book::in_memory("wheelhouse");
    const auto season = log_tiny_season(book);
    const auto before = all_rows(book);
    CHECK_THROWS_AS(book.change(by("Ana", 200),
                                [&](Change& change) -> Checked<Done> {
                                    change.strike(kind("trip"), season.trip).value();
                                    throw std::bad_alloc();
                                }),
                    std::bad_alloc);
    CHECK(same_rows(all_rows(book), before));
    log_row(book, by("Ana", 201), "barge", {{"name", "Tuatua"}});
    CHECK(journal_state(book).entries == 7);
    CHECK_FALSE(check_journal(book));
}

TEST_CASE("a change that changes nothing makes no entry") {
    auto book = Book::in_memory("wheelhouse");
    const auto season = log_tiny_season(book);
    const auto same = set_field(book, by("Ana", 200), "barge", season.barge, "name", std::string("Pipi"));
    REQUIRE(same);
    CHECK_FALSE(same->has_value());
    const auto there_and_back = book.change(by("Ana", 200), [&](Change& change) -> Checked<Done> {
        change.set(kind("barge"), season.barge, 0, std::string("Tuatua")).value();
        return change.set(kind("barge"), season.barge, 0, std::string("Pipi"));
    });
    CHECK_FALSE(there_and_back->has_value());
    CHECK(journal_state(book).entries == 6);
}

TEST_CASE("a value outside its range is refused by the book, and the right one after it is taken") {
    auto book = Book::in_memory("wheelhouse");
    const Kind& barges = kind("barge");
    const auto insert = [&](double capacity) {
        return book.change(by("Ana"), [&](Change& change) -> Checked<Done> {
            change.insert(barges, values_of(barges, {{"name", "Pipi"}, {"capacity_m3", capacity}}));
            return Done{};
        });
    };
    REQUIRE_FALSE(insert(-5));
    CHECK(insert(-5).refusals().front().code == "rule-of-the-book");
    CHECK(insert(600));
    CHECK(book.rows(barges).size() == 1);
}

TEST_CASE("a row may come before the one it refers to, but not without it") {
    auto book = Book::in_memory("wheelhouse");
    Id nowhere;
    nowhere.bytes.fill(7);
    const Kind& stations = kind("station");
    const auto lost = book.change(by("Ana"), [&](Change& change) -> Checked<Done> {
        change.insert(stations, values_of(stations, {{"shift", nowhere}}));
        return Done{};
    });
    REQUIRE_FALSE(lost);
    CHECK(lost.refusals().front().code == "rule-of-the-book");
    CHECK(journal_state(book).entries == 0);
    const auto found = book.change(by("Ana"), [&](Change& change) -> Checked<Done> {
        const Id station = change.insert(stations, values_of(stations, {{"station", "ST1"}}));
        const Id shift = change.insert(kind("shift"), values_of(kind("shift"), {{"shift", "S1"}}));
        return change.set(stations, station, *stations.index_of("shift"), shift);
    });
    CHECK(found);
    CHECK_FALSE(check_journal(book));
}

TEST_CASE("a clock set back does not make new entries look old") {
    auto book = Book::in_memory("wheelhouse");
    std::vector<Id> barges;
    for (const int minute : {60, 0, -600, 30, 61})
        barges.push_back(log_row(book, by("Ana", minute), "barge", {{"name", "B" + std::to_string(minute)}}));
    std::pair<std::int64_t, std::int64_t> last{0, 0};
    for (std::int64_t seq = 1; seq <= 5; ++seq) {
        const auto entry = find_entry(book, {"wheelhouse", seq}).value();
        const std::pair stamp{entry.stamp_ms, entry.stamp_count};
        CHECK(stamp > last);
        last = stamp;
    }
    CHECK(find_entry(book, {"wheelhouse", 3})->at == morning(-600));  // kept as the clock said
    CHECK(std::is_sorted(barges.begin(), barges.end()));              // ids too keep the order
}

TEST_CASE("more entries in one millisecond than an id can count keep their order") {
    auto book = Book::in_memory("wheelhouse");
    std::vector<Id> ids;
    for (int i = 0; i < 4200; ++i)
        ids.push_back(log_row(book, by("Ana"), "tug", {{"name", "T" + std::to_string(i)}}));
    CHECK(std::is_sorted(ids.begin(), ids.end()));
    CHECK(find_entry(book, {"wheelhouse", 4200})->stamp_count <= last_stamp_count);
    CHECK_FALSE(check_journal(book));
}

TEST_CASE("one import is one transaction and as many entries as it needs") {
    auto book = Book::in_memory("office");
    const Kind& tallies = kind("tally");
    const auto import = [&](int rows, bool refuse) {
        return book.change(by("Ben", 0, "", EntryKind::import), [&](Change& change) -> Checked<Done> {
            for (int i = 0; i < rows; ++i)
                change.insert(tallies, values_of(tallies, {{"count", 1.0 * (i % 100)}}));
            if (refuse) return Refusal{"bad-row", "tallies.csv line 9", "no", "yes"};
            return Done{};
        });
    };
    CHECK_FALSE(import(rows_per_entry + 1, true));  // when one entry is full already
    CHECK(journal_state(book).entries == 0);
    CHECK(book.rows(tallies).empty());
    constexpr int rows = rows_per_entry * 2 + 1;
    REQUIRE(import(rows, false));
    CHECK(journal_state(book).entries == 3);
    CHECK(book.rows(tallies).size() == static_cast<std::size_t>(rows));
    CHECK_FALSE(check_journal(book));
}

TEST_CASE("a row struck out stays in the book, is left out of its rows, and its label is free again") {
    auto book = Book::in_memory("wheelhouse");
    const auto season = log_tiny_season(book);
    REQUIRE(strike_row(book, by("Ana", 200), "trip", season.trip));
    CHECK(book.rows(kind("trip")).empty());
    CHECK(book.rows(kind("trip"), true).size() == 1);
    CHECK(book.row(kind("trip"), season.trip)->struck);
    CHECK_FALSE(book.labelled(kind("trip"), "T1"));
    CHECK_FALSE(strike_row(book, by("Ana", 201), "trip", season.trip));
    const auto steps = history(book, kind("trip"), season.trip);
    REQUIRE(steps.size() == 2);
    CHECK(steps[0].made);
    CHECK(steps[1].fields.front().field == "struck");
}

TEST_CASE("a row's history tells each old and new value, who and why") {
    auto book = Book::in_memory("wheelhouse");
    const auto season = log_tiny_season(book);
    set_field(book, by("Ben", 200, "misread"), "barge", season.barge, "capacity_m3", 610.0).value();
    const auto steps = history(book, kind("barge"), season.barge);
    REQUIRE(steps.size() == 2);
    CHECK(steps[1].who == "Ben");
    CHECK(steps[1].why == "misread");
    REQUIRE(steps[1].fields.size() == 1);
    CHECK(steps[1].fields[0].field == "capacity_m3");
    CHECK(steps[1].fields[0].before == Value{600.0});
    CHECK(steps[1].fields[0].after == Value{610.0});
}
