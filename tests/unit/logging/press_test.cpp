// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/logging/press.h"

#include <catch2/catch.hpp>

#include "model/book/season.h"
#include "tests/support/tiny_season.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

struct Desk {
    Book book = Book::in_memory("heron");
    Season season;

    Desk() {
        log_tiny_season(book);
        read();
    }
    void read() { season = read_season(book); }
    [[nodiscard]] Press at(std::int64_t minutes) const { return {book, season, morning(minutes)}; }
    void write(const LogLines& lines, std::int64_t minutes) {
        book.change(by("Ana", minutes), [&](Change& change) { return log_lines_in(change, lines); }).value();
        read();
    }
    template <class R>
    const R& last(const Shelf<R>& shelf) const {
        return shelf.rows().back();
    }
};

}  // namespace

TEST_CASE("the next label follows the manner of the newest one, struck ones counted", "[press]") {
    Desk desk;
    CHECK(next_label_of(desk.book, kind("trip")) == "T2");
    CHECK(next_label_of(desk.book, kind("sounding")) == "SD-0001");
    log_row(desk.book, by("Ana", 200), "trip", {{"trip", std::string("T-0099")}});
    const Id struck = log_row(desk.book, by("Ana", 201), "trip", {{"trip", std::string("T-0100")}});
    strike_row(desk.book, by("Ana", 202), "trip", struck).value();
    CHECK(next_label_of(desk.book, kind("trip")) == "T-0101");
}

TEST_CASE("buckets are counted on one line a station and load, and never below none", "[press]") {
    Desk desk;
    desk.write({{&kind("load"), "L1", {{"loading_end", ""}}}}, 60);
    const auto press = [&](double buckets) {
        desk.write(count_buckets(desk.at(61), desk.last(desk.season.shifts), desk.last(desk.season.stations),
                                 desk.last(desk.season.loads), {}, buckets, false),
                   61);
    };
    press(1);
    press(1);
    REQUIRE(desk.season.tallies.size() == 1);
    CHECK(desk.last(desk.season.tallies).count == 2);
    CHECK(desk.last(desk.season.loads).loading_start == morning(61));
    press(-5);
    CHECK(desk.last(desk.season.tallies).count == 0);
    CHECK(count_buckets(desk.at(62), desk.last(desk.season.shifts), desk.last(desk.season.stations),
                        desk.last(desk.season.loads), {}, -1, false)
              .empty());
}

TEST_CASE("a second opening of the doors is a second release", "[press]") {
    Desk desk;
    desk.write(cast_off(desk.at(300), &desk.last(desk.season.loads), {}), 300);
    const auto trip = [&]() -> const Trip& { return desk.last(desk.season.trips); };
    desk.write(doors_open(desk.at(310), trip()), 310);
    desk.write(doors_shut(desk.at(312), trip()), 312);
    desk.write(doors_open(desk.at(320), trip()), 320);
    desk.write(empty(desk.at(325), trip()), 325);
    REQUIRE(desk.season.releases.size() == 2);
    CHECK(desk.season.releases.rows()[0].doors_shut == morning(312));
    CHECK_FALSE(desk.season.releases.rows()[0].empty);
    CHECK(desk.season.releases.rows()[1].doors_open == morning(320));
    CHECK(desk.season.releases.rows()[1].empty == morning(325));
}

TEST_CASE("a trip that carries its release itself goes on doing so", "[press]") {
    Desk desk;
    desk.write({{&kind("trip"), "T1", {{"release_start", "2025-03-03T20:00+13:00"}}}}, 300);
    const Trip& trip = desk.last(desk.season.trips);
    desk.write(empty(desk.at(120), trip), 301);
    CHECK(desk.season.releases.size() == 0);
    CHECK(desk.last(desk.season.trips).release_end == morning(120));
}

TEST_CASE("what a hopper kept opens the barge's next load", "[press]") {
    Desk desk;
    desk.write(doors_open(desk.at(150), desk.last(desk.season.trips)), 150);
    desk.write({{&kind("release"), "R-0001", {{"left_m3", "92"}}}}, 151);
    desk.write(barge_alongside(desk.at(200), desk.last(desk.season.barges)), 200);
    CHECK(desk.last(desk.season.loads).left_before_m3 == 92);
}
