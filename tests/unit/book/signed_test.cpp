// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "model/book/change.h"
#include "model/book/history.h"
#include "model/book/journal.h"
#include "model/book/journal_check.h"
#include "tests/support/tiny_season.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

struct SignedBook {
    Book book = Book::in_memory("wheelhouse");
    TinySeason season = log_tiny_season(book);
    EntryName signing = sign_shift(book, season.shift);

    auto set(const char* kind, const Id& id, const char* field, const Value& value, const char* why = "") {
        return set_field(book, by("Ben", 800, why), kind, id, field, value);
    }
};

}  // namespace

TEST_CASE("a signed value changes only with a reason, and then it is a correction") {
    SignedBook b;
    const auto silent = b.set("load", b.season.load, "loading_end", time_of(morning(70)));
    REQUIRE_FALSE(silent);
    CHECK(silent.refusals().front().code == "signed");
    CHECK(silent.refusals().front().what == "it was signed with shift S1 by Ana");
    CHECK(silent.refusals().front().where == "load L1");
    const auto said = b.set("load", b.season.load, "loading_end", time_of(morning(70)), "read off the log");
    REQUIRE(said);
    const auto entry = find_entry(b.book, said->value()).value();
    CHECK(entry.kind == EntryKind::correct);
    CHECK(entry.why == "read off the log");
    const auto steps = history(b.book, kind("load"), b.season.load);
    CHECK(steps.back().after_signing);
    CHECK(steps.back().fields[0].before == Value{morning(60).utc_ms});
    CHECK_FALSE(steps.front().after_signing);
}

TEST_CASE("a signature covers the shift, its stations, crew, delays, soundings, tallies, loads and trips") {
    Book book = Book::in_memory("wheelhouse");
    const auto season = log_tiny_season(book);
    const Value shift = season.shift;
    const Value station = season.station;
    const Value trip = season.trip;
    std::vector<std::pair<const char*, Id>> rows{
        {"shift", season.shift}, {"station", season.station}, {"load", season.load}, {"trip", season.trip}};
    const auto log = [&](const char* kind, const Fields& fields) {
        rows.emplace_back(kind, log_row(book, by("Ana", 100), kind, fields));
    };
    log("crew", {{"shift", shift}, {"name", "Cy"}});
    log("delay", {{"shift", shift}, {"cause", "weather"}});
    log("sounding", {{"station", station}, {"by", "Ana"}});
    log("tally", {{"station", station}, {"count", 40.0}});
    log("release", {{"trip", trip}, {"left_m3", 0.0}});
    const Id other = log_row(book, by("Ana", 101), "barge", {{"name", "Tuatua"}});
    const Id open = log_row(book, by("Ana", 102), "load", {{"load", "L2"}});
    sign_shift(book, season.shift);
    for (const auto& [kind, id] : rows) {
        CAPTURE(kind);
        CHECK_FALSE(strike_row(book, by("Ana", 800), kind, id));
    }
    CHECK(strike_row(book, by("Ana", 800), "barge", other));
    CHECK(strike_row(book, by("Ana", 800), "load", open));  // not full yet when the shift ended
    CHECK(strike_row(book, by("Ana", 800, "twice in the log"), "trip", season.trip));
}

TEST_CASE("what was blank when the shift was signed is filled without a reason, and may be changed again") {
    SignedBook b;
    const auto filled = b.set("load", b.season.load, "stated_hopper_m3", 540.0);
    REQUIRE(filled);
    CHECK(find_entry(b.book, filled->value())->kind == EntryKind::change);
    CHECK(b.set("load", b.season.load, "stated_hopper_m3", 545.0));
    CHECK(history(b.book, kind("load"), b.season.load).back().after_signing);
    const auto twice = b.book.change(by("Ben", 801), [&](Change& change) -> Checked<Done> {
        const Kind& loads = kind("load");
        const auto field = *loads.index_of("overflow");
        if (auto done = change.set(loads, b.season.load, field, std::string("no")); !done) return done;
        return change.set(loads, b.season.load, field, std::string("yes"));
    });
    CHECK(twice);
}

TEST_CASE("what a correction blanked is still covered by the signature") {
    SignedBook b;
    REQUIRE(b.set("load", b.season.load, "loading_end", time_of(morning(61)), "misread"));
    REQUIRE(b.set("trip", b.season.trip, "returned", {}, "not known after all"));
    CHECK_FALSE(b.set("trip", b.season.trip, "returned", time_of(morning(190))));
    CHECK(b.set("trip", b.season.trip, "returned", time_of(morning(190)), "the tug's log"));
}

TEST_CASE("a row added after the signing is not covered until the shift is signed again") {
    SignedBook b;
    const Id late = log_row(b.book, by("Ana", 790), "delay", {{"shift", b.season.shift}, {"cause", "tide"}});
    CHECK(b.set("delay", late, "cause", std::string("weather")));
    CHECK(history(b.book, kind("delay"), late).front().after_signing);
    REQUIRE(b.set("shift", b.season.shift, "signed_at", time_of(morning(800)), "signed again"));
    CHECK_FALSE(b.set("delay", late, "cause", std::string("tide")));
    CHECK_FALSE(strike_row(b.book, by("Ana", 810), "delay", late));
}

TEST_CASE("signing and mending the sheet in one change needs no reason, in whatever order") {
    Book book = Book::in_memory("wheelhouse");
    const auto season = log_tiny_season(book);
    const Kind& shifts = kind("shift");
    const auto done = book.change(by("Ana", 720, "", EntryKind::sign), [&](Change& change) -> Checked<Done> {
        change.set(shifts, season.shift, *shifts.index_of("signed_at"), time_of(morning(720))).value();
        change.set(shifts, season.shift, *shifts.index_of("signed_by"), std::string("Ana")).value();
        return change.set(shifts, season.shift, *shifts.index_of("skipper"), std::string("Ana B."));
    });
    REQUIRE(done);
    CHECK(find_entry(book, done->value())->kind == EntryKind::sign);
    CHECK_FALSE(set_field(book, by("Ana", 721), "shift", season.shift, "skipper", std::string("Ben")));
}

TEST_CASE("rows that come in the same import as the signature need no reason, however it is cut") {
    Book book = Book::in_memory("office");
    const Kind& shifts = kind("shift");
    const Kind& delays = kind("delay");
    Id shift;
    Id last;
    const auto import =
        book.change(by("Ben", 0, "", EntryKind::import), [&](Change& change) -> Checked<Done> {
            shift = change.insert(shifts, values_of(shifts, {{"shift", "S1"},
                                                             {"signed_by", "Ana"},
                                                             {"signed_at", time_of(morning())}}));
            for (int i = 0; i < rows_per_entry + 10; ++i) {
                last = change.insert(delays, values_of(delays, {{"shift", shift}, {"cause", "tide"}}));
                change.set(delays, last, *delays.index_of("cause"), std::string("weather")).value();
            }
            return Done{};
        });
    REQUIRE(import);
    CHECK(import->value().seq > 1);
    // Once it has landed, the signature covers all of it.
    CHECK_FALSE(set_field(book, by("Ben", 5), "delay", last, "cause", std::string("tide")));
    CHECK_FALSE(set_field(book, by("Ben", 5), "shift", shift, "signed_by", std::string("Cy")));
}

TEST_CASE("a shift that was struck out covers nothing") {
    SignedBook b;
    REQUIRE(strike_row(b.book, by("Ana", 800, "opened twice"), "shift", b.season.shift));
    CHECK(b.set("load", b.season.load, "loading_end", time_of(morning(70))));
    CHECK_FALSE(check_journal(b.book));
}
