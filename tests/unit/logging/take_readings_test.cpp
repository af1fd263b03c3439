// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/logging/take_readings.h"

#include "model/book/material_bytes.h"
#include "model/folder/match_material.h"
#include "model/folder/regular_file.h"
#include "model/record/watched_water.h"
#include "tests/support/watched_harbour.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

const Act ana{EntryKind::import, logger_start + 400 * ms_per_day, "Ana", ""};

std::string put(const WatchedHarbour& harbour, const std::string& name, const std::string& words) {
    std::ofstream(harbour.file(name)) << words;
    return harbour.file(name);
}

std::size_t held(const WatchedHarbour& harbour) {
    const auto site = harbour.book.labelled(definition<Site>().kind(), "R1");
    return held_readings(harbour.book, site->id).size();
}

std::string told(const std::string& rows) {
    const HeldBytes bytes(rows);
    WatchedHarbour harbour({}, {});
    const auto look = look_at_readings(harbour.book, "R1", "a.csv", bytes, {}, ana.at);
    std::string all;
    for (const auto& note : notes_of(look->rows, "a.csv", Zone::utc()))
        all += one_line(note) + "\n";
    return all;
}

}  // namespace

TEST_CASE("what was looked at is what is kept, whatever becomes of the file in between") {
    WatchedHarbour harbour({}, {});
    const std::string rows = "time,turb\n2025-10-01T00:00Z,5\n2025-10-01T00:10Z,6\n";
    const auto path = put(harbour, "a.csv", rows);
    const auto bytes = open_regular_file(path, "a.csv", largest_file_bytes);
    auto prepared = prepare_readings(harbour.book, "R1", "a.csv", **bytes, {}, ana.at);
    REQUIRE(prepared);
    put(harbour, "a.csv", "time,turb\n2025-10-01T00:00Z,9\n");
    std::filesystem::remove(path);
    const std::string digest = prepared->packed->digest();
    const auto kept = keep_readings(harbour.book, ana, "R1", "a.csv", std::move(*prepared));
    REQUIRE(kept);
    CHECK(kept->entry);
    CHECK(held(harbour) == 2);
    CHECK(harbour.book.material(digest) == rows);
}

TEST_CASE("readings that lie in the future are noted with their row, and kept") {
    // The clock of the change: 2026-10-31.
    const std::string rows = "time,turb\n2025-10-01T00:00Z,5\n2062-01-01T00:00Z,6\n2062-01-01T00:10Z,6\n";
    CHECK(told(rows) ==
          "a.csv line 3: 2 readings lie in the future, the first at 2062-01-01T00:00:00Z: kept; "
          "see whether the logger's clock and the zone are right\n");
    CHECK(told("time,turb\n2025-10-01T00:00Z,5\n").empty());
    WatchedHarbour harbour({}, {});
    const HeldBytes bytes(rows);
    REQUIRE(take_readings(harbour.book, ana, "R1", "a.csv", bytes, {}));
    CHECK(held(harbour) == 3);
}

TEST_CASE("readings of a clock that nobody set are noted with their row") {
    CHECK(told("time,turb\n2000-01-01T00:00Z,5\n2025-10-01T00:00Z,6\n") ==
          "a.csv line 2: a reading lies before 2000-01-02, the first at 2000-01-01T00:00:00Z: kept; see "
          "whether "
          "the logger's clock was set and is right\n");
}
