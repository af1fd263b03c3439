// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/undo.h"

#include <catch2/catch.hpp>

#include "model/book/journal.h"
#include "model/book/journal_check.h"
#include "tests/support/tiny_season.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

struct UndoBook {
    Book book = Book::in_memory("wheelhouse");
    TinySeason season = log_tiny_season(book);

    void name(const std::string& who, const std::string& name) {
        set_field(book, by(who, 200), "barge", season.barge, "name", name).value();
    }
    void remark(const std::string& who, const std::string& text) {
        set_field(book, by(who, 200), "trip", season.trip, "remarks", text).value();
    }
    std::string name() { return std::get<std::string>(field_of(book, "barge", season.barge, "name")); }
    bool undo(const std::string& who) { return spoilbook::undo(book, by(who, 300)).ok(); }
    bool redo(const std::string& who) { return spoilbook::redo(book, by(who, 300)).ok(); }
    Refusal refused(const std::string& who) { return spoilbook::undo(book, by(who, 300)).refusals().front(); }
};

}  // namespace

TEST_CASE("undo takes back the newest change, as a new entry, and redo restores it") {
    UndoBook b;
    b.name("Ana", "Tuatua");
    const auto undone = undo(b.book, by("Ana", 300));
    REQUIRE(undone);
    CHECK(b.name() == "Pipi");
    const auto entry = find_entry(b.book, *undone).value();
    CHECK(entry.kind == EntryKind::undo);
    CHECK(entry.takes_back == 7);
    CHECK(entry.name.seq == 8);
    REQUIRE(redo(b.book, by("Ana", 301)));
    CHECK(b.name() == "Tuatua");
    CHECK_FALSE(check_journal(b.book));
}

TEST_CASE("several undos go further back, and as many redos come forward again") {
    UndoBook b;
    for (const char* name : {"B1", "B2", "B3"})
        b.name("Ana", name);
    CHECK(b.undo("Ana"));
    CHECK(b.undo("Ana"));
    CHECK(b.name() == "B1");
    CHECK(b.redo("Ana"));
    CHECK(b.name() == "B2");
    CHECK(b.undo("Ana"));
    CHECK(b.undo("Ana"));
    CHECK(b.name() == "Pipi");
    CHECK(b.redo("Ana"));
    CHECK(b.redo("Ana"));
    CHECK(b.redo("Ana"));
    CHECK(b.name() == "B3");
    CHECK_FALSE(b.redo("Ana"));
    CHECK_FALSE(check_journal(b.book));
}

TEST_CASE("a new change ends what could be redone") {
    UndoBook b;
    b.name("Ana", "B1");
    CHECK(b.undo("Ana"));
    b.remark("Ana", "calm");
    CHECK_FALSE(b.redo("Ana"));
    CHECK(b.undo("Ana"));  // the remark; then what came before the name
    CHECK(next_undo(b.book, "Ana")->name.seq == 6);
    CHECK(b.redo("Ana"));
    CHECK_FALSE(b.redo("Ana"));
    CHECK(b.name() == "Pipi");
}

TEST_CASE("each person takes back their own changes") {
    UndoBook b;
    b.remark("Ben", "calm");
    b.name("Ana", "B1");
    CHECK(b.undo("Ben"));
    CHECK(b.name() == "B1");
    CHECK(is_blank(field_of(b.book, "trip", b.season.trip, "remarks")));
    CHECK(b.refused("Ben").code == "nothing-to-undo");
    CHECK(b.undo("Ana"));
    CHECK(b.name() == "Pipi");
    CHECK(b.redo("Ben"));
    CHECK(b.redo("Ana"));
}

TEST_CASE("undo is refused where another changed the same field since, and says which entry") {
    UndoBook b;
    b.name("Ana", "B1");
    b.name("Ben", "B2");
    set_field(b.book, by("Ben", 201), "barge", b.season.barge, "capacity_m3", 610.0).value();
    const auto before = all_rows(b.book);
    const auto head = journal_state(b.book).head;
    const auto refusal = b.refused("Ana");
    CHECK(refusal.code == "stands-on-it");
    CHECK(refusal.what.find("entry wheelhouse:8 by Ben") != std::string::npos);
    CHECK(same_rows(all_rows(b.book), before));
    CHECK(journal_state(b.book).head == head);
}

TEST_CASE("undo goes through where another changed another field of the row since") {
    UndoBook b;
    b.name("Ana", "B1");
    set_field(b.book, by("Ben", 201), "barge", b.season.barge, "capacity_m3", 610.0).value();
    CHECK(b.undo("Ana"));
    CHECK(b.name() == "Pipi");
    CHECK(field_of(b.book, "barge", b.season.barge, "capacity_m3") == Value{610.0});
}

TEST_CASE("undo of a row is refused where something refers to it, and nothing is half undone") {
    UndoBook b;
    b.book
        .change(by("Ana", 200),
                [&](Change& change) -> Checked<Done> {
                    change.set(kind("barge"), b.season.barge, 0, std::string("B1")).value();
                    change.insert(kind("load"), values_of(kind("load"), {{"load", "L2"}}));
                    return Done{};
                })
        .value();
    const Id second = b.book.labelled(kind("load"), "L2")->id;
    log_row(b.book, by("Ben", 201), "trip", {{"trip", "T2"}, {"load", second}});
    const auto before = all_rows(b.book);
    const auto refusal = b.refused("Ana");
    CHECK(refusal.what.find("entry wheelhouse:8 by Ben") != std::string::npos);
    CHECK(same_rows(all_rows(b.book), before));
    CHECK(b.undo("Ben"));
    CHECK(b.undo("Ana"));
    CHECK(b.name() == "Pipi");
    CHECK_FALSE(b.book.labelled(kind("load"), "L2"));
    CHECK_FALSE(check_journal(b.book));
}

TEST_CASE("undo of a struck row brings it back") {
    UndoBook b;
    strike_row(b.book, by("Ana", 200), "trip", b.season.trip).value();
    CHECK(b.undo("Ana"));
    CHECK(b.book.rows(kind("trip")).size() == 1);
}

TEST_CASE("undo goes back to the opening of the shift and no further") {
    UndoBook b;  // harbour, barge, then the shift and what was logged in it
    for (const char* what : {"trip", "load", "station", "shift"}) {
        CAPTURE(what);
        CHECK(b.undo("Ana"));
    }
    CHECK(b.book.rows(kind("shift")).empty());
    CHECK(b.undo("Ana"));  // the shift was a slip: what was done before it is within reach again
    for (int i = 0; i < 5; ++i)
        CHECK(b.redo("Ana"));
    b.name("Ana", "B1");
    log_row(b.book, by("Ben", 730), "shift", {{"shift", "S2"}});
    CHECK(b.refused("Ana").code == "nothing-to-undo");
    CHECK(b.undo("Ben"));
    CHECK(b.undo("Ana"));
}

TEST_CASE("undo is refused where it touches what was signed since, or the signature itself") {
    UndoBook b;
    b.remark("Ana", "calm");
    sign_shift(b.book, b.season.shift);
    CHECK(b.refused("Ana").code == "signed");
    const auto corrected =
        set_field(b.book, by("Ana", 800, "misread"), "trip", b.season.trip, "remarks", std::string("swell"));
    REQUIRE(corrected);
    CHECK(b.refused("Ana").code == "signed");
    set_field(b.book, by("Cy", 801), "trip", b.season.trip, "tug_master", std::string("Cy")).value();
    CHECK(b.undo("Cy"));  // blank when it was signed
    // A signature put there by an ordinary change is no less one.
    const Id second = log_row(b.book, by("Ana", 802), "shift", {{"shift", "S2"}});
    set_field(b.book, by("Ana", 803), "shift", second, "signed_at", time_of(morning(803))).value();
    CHECK(b.refused("Ana").code == "signed");
}

TEST_CASE("a correction is not taken back, and does not stand in the way of what came before it") {
    UndoBook b;
    b.remark("Ana", "calm");
    sign_shift(b.book, b.season.shift);
    b.name("Ana", "B1");
    set_field(b.book, by("Ana", 800, "misread"), "trip", b.season.trip, "remarks", std::string("swell"))
        .value();
    CHECK(b.undo("Ana"));
    CHECK(b.name() == "Pipi");
    CHECK(b.refused("Ana").code == "signed");
}

TEST_CASE("imports and stored files are not taken back, and do not stand in the way") {
    UndoBook b;
    b.name("Ana", "B1");
    b.book
        .change(by("Ana", 200),
                [](Change& change) -> Checked<Done> {
                    change.keep("a track").value();
                    return Done{};
                })
        .value();
    log_row(b.book, by("Ana", 201, "", EntryKind::import), "tug", {{"name", "Kea"}});
    CHECK(b.undo("Ana"));
    CHECK(b.name() == "Pipi");
    CHECK(b.book.rows(kind("tug")).size() == 1);
}

TEST_CASE("in an empty book there is nothing to take back or restore") {
    Book empty = Book::in_memory("wheelhouse");
    CHECK(undo(empty, by("Ana")).refusals().front().code == "nothing-to-undo");
    CHECK(redo(empty, by("Ana")).refusals().front().code == "nothing-to-redo");
}
