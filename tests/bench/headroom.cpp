// SPDX-License-Identifier: GPL-3.0-or-later
// bench_headroom BOOK [BOOK]: every limit of a book, against one hand-written SUM over its trips; with a
// second, larger book also how both grow. Books come from sample-db/generate --season SEED --trips N.
#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include <vector>

#include "model/book/book.h"
#include "model/book/season.h"
#include "model/consent/limit.h"
#include "tests/bench/median.h"
#include "tests/bench/two_books.h"

using namespace spoilbook;
using spoilbook::bench::median_seconds;

namespace {

struct Times {
    std::size_t trips = 0, limits = 0;
    double sum = 0, read = 0, ledger = 0, board = 0;
};

Times measure(const char* path) {
    Times times;
    SQLite::Database db(path, SQLite::OPEN_READONLY);
    times.sum = median_seconds([&] {
        SQLite::Statement sum(db,
                              "SELECT sum(stated_hopper_m3), count(*), max(release_end) FROM trip JOIN load "
                              "ON load.uuid = trip.load");
        sum.executeStep();
    });
    const auto book = Book::open_to_read(path);
    Season season;
    times.read = median_seconds([&] { season = read_season(*book); });
    times.trips = season.trips.size();
    std::unique_ptr<Ledger> ledger;
    times.ledger = median_seconds([&] { ledger = std::make_unique<Ledger>(season); });
    const Instant end = ledger->released().empty() ? Instant{} : ledger->released().back().at;
    times.board = median_seconds([&] { times.limits = limits_at(*ledger, end).size(); });
    fmt::print(
        "{}: {} trips, {} limit rows\n  one SUM {:.4f} s; read the book {:.3f} s = {:.0f} SUMs; value every "
        "load {:.3f} s = {:.0f} SUMs; "
        "every limit with its whole history {:.3f} s = {:.0f} SUMs\n",
        path, times.trips, times.limits, times.sum, times.read, times.read / times.sum, times.ledger,
        times.ledger / times.sum, times.board, times.board / times.sum);
    return times;
}

}  // namespace

int main(int argc, char** argv) {
    return bench::over_two_books(
        argc, argv, "bench_headroom", measure, [](const auto& small, const auto& large) {
            fmt::print(
                "growth for {:.1f} times the trips: SUM {:.1f}, read {:.1f}, value {:.1f}, limits {:.1f} "
                "times\n",
                static_cast<double>(large.trips) / static_cast<double>(small.trips), large.sum / small.sum,
                large.read / small.read, large.ledger / small.ledger, large.board / small.board);
        });
}
