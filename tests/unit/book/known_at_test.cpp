// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "model/book/journal.h"
#include "model/book/journal_check.h"
#include "model/book/replay.h"
#include "model/book/season.h"
#include "tests/support/temp_folder.h"
#include "tests/support/tiny_season.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

Book as_known(const Book& book, const std::string& text) {
    const auto point = parse_known_at(book, text);
    CAPTURE(text);
    return known_at(book, point.value());
}

}  // namespace

TEST_CASE("what the book knew at each entry is what its rows were then") {
    auto book = Book::in_memory("wheelhouse");
    std::vector<std::vector<std::vector<Row>>> then{all_rows(book)};
    const auto season = log_tiny_season(book);
    then.resize(7);
    then[6] = all_rows(book);
    set_field(book, by("Ana", 200), "barge", season.barge, "name", std::string("B1")).value();
    then.push_back(all_rows(book));
    strike_row(book, by("Ben", 201), "trip", season.trip).value();
    then.push_back(all_rows(book));
    undo(book, by("Ben", 202)).value();
    then.push_back(all_rows(book));
    for (const std::size_t seq : {6U, 7U, 8U, 9U}) {
        CAPTURE(seq);
        CHECK(same_rows(all_rows(as_known(book, std::to_string(seq))), then[seq]));
        CHECK(same_rows(all_rows(as_known(book, "wheelhouse:" + std::to_string(seq))), then[seq]));
    }
    const Book first = as_known(book, "1");
    CHECK(first.rows(kind("harbour")).size() == 1);
    CHECK(first.rows(kind("barge")).empty());
    CHECK_FALSE(first.writable());
}

TEST_CASE("known at a time is every entry up to it, that minute included") {
    auto book = Book::in_memory("wheelhouse");
    log_tiny_season(book);
    CHECK(as_known(book, "2025-03-03T07:00Z").rows(kind("load")).size() == 1);
    CHECK(as_known(book, "2025-03-03T06:59Z").rows(kind("load")).empty());
    CHECK(as_known(book, "2025-03-03T06:59Z").rows(kind("shift")).size() == 1);
    CHECK(as_known(book, "2025-03-01").rows(kind("harbour")).empty());
    // 20:00 at the harbour is 07:00 UTC (Pacific/Auckland keeps summer time in March: COMP)
    CHECK(as_known(book, "2025-03-03T20:00").rows(kind("load")).size() == 1);
    CHECK(as_known(book, "2025-03-03T19:59").rows(kind("load")).empty());
}

TEST_CASE("known at a time holds together where the clock was set back") {
    auto book = Book::in_memory("wheelhouse");
    const Id barge = log_row(book, by("Ana", 60), "barge", {{"name", "Pipi"}});
    set_field(book, by("Ana", 0), "barge", barge, "name", std::string("Tuatua")).value();
    CHECK(as_known(book, "2025-03-03T06:30Z").rows(kind("barge")).empty());
    const Book later = as_known(book, "2025-03-03T07:00Z");
    CHECK(field_of(later, "barge", barge, "name") == Value{"Tuatua"});
}

TEST_CASE("a point that is no time and no entry is refused") {
    auto book = Book::in_memory("tug-1");
    log_tiny_season(book);
    CHECK(parse_known_at(book, "99").refusals().front().code == "no-such-entry");
    CHECK(parse_known_at(book, "tug-1:99").refusals().front().code == "no-such-entry");
    CHECK(parse_known_at(book, "tug-1:6"));
    CHECK_FALSE(parse_known_at(book, "yesterday"));
    CHECK_FALSE(parse_known_at(book, ""));
    CHECK(parse_known_at(Book::in_memory("tug-1"), "1").refusals().front().code == "no-such-entry");
}

TEST_CASE("two devices in one book have a chain each") {
    const TempFolder folder;
    const auto path = folder.file("marram.sbook");
    TinySeason season;
    {
        auto book = Book::create(path, "wheelhouse");
        season = log_tiny_season(*book);
    }
    {
        auto book = Book::open_to_write(path, "office", by("Ben"));
        set_field(*book, by("Ben", 0), "barge", season.barge, "name", std::string("Tuatua")).value();
        CHECK_FALSE(next_undo(*book, "Ana"));
        REQUIRE(next_undo(*book, "Ben"));
        const auto entry = find_entry(*book, {"office", 1}).value();
        CHECK(entry.seen == std::map<std::string, std::int64_t>{{"wheelhouse", 6}});
        CHECK(entry.prev == std::string(32, '\0'));
        CHECK(entry.stamp_ms == morning(180).utc_ms);  // after all it had seen, though its clock is behind
        CHECK(entry.stamp_count == 1);
    }
    auto book = Book::open_to_write(path, "wheelhouse", by("Ana"));
    set_field(*book, by("Ana", 200), "barge", season.barge, "name", std::string("Pipi")).value();
    CHECK_FALSE(check_journal(*book));
    const auto state = journal_state(*book);
    REQUIRE(state.devices.size() == 2);
    CHECK(state.devices[0].device == "office");
    CHECK(state.devices[0].entries == 1);
    CHECK(state.devices[1].entries == 7);
    CHECK(state.entries == 8);
    CHECK(parse_known_at(*book, "1").refusals().front().code == "which-device");
    CHECK(field_of(as_known(*book, "office:1"), "barge", season.barge, "name") == Value{"Tuatua"});
    CHECK(field_of(as_known(*book, "wheelhouse:6"), "barge", season.barge, "name") == Value{"Pipi"});
}

TEST_CASE("a season read from the book is what was logged, without what was struck out") {
    auto book = Book::in_memory("wheelhouse");
    const auto ids = log_tiny_season(book);
    strike_row(book, by("Ana", 200), "trip", ids.trip).value();
    const Season season = read_season(book);
    CHECK(season.harbour.name == "Marram");
    CHECK(season.zone.name() == "Pacific/Auckland");
    CHECK(season.loads.find(ids.load)->barge == ids.barge);
    CHECK(season.trips.size() == 0);
    CHECK(book_zone(Book::in_memory("x")).name() == Zone::utc().name());
}
