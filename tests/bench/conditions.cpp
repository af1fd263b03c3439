// SPDX-License-Identifier: GPL-3.0-or-later
// bench_conditions BOOK [LARGER_BOOK]: the ledger (every load valued, made once for all that follows), one
// release check, the whole conditions board, and every rolling window of the whole history judged anew, each
// against one hand-written SUM over the book's trips; with a second, larger book also how all of them grow.
// Books come from sample-db/generate --season SEED --trips N [--mixed].
#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include <set>

#include "model/answer/board.h"
#include "model/answer/checked_release.h"
#include "model/book/season.h"
#include "model/consent/first_over.h"
#include "tests/bench/median.h"
#include "tests/bench/two_books.h"

using namespace spoilbook;
using spoilbook::bench::median_seconds;

namespace {

struct Times {
    std::size_t trips = 0;
    double sum = 0, ledger = 0, check = 0, board = 0, rolling = 0;
};

/// The newest load that nobody has released, an hour after the last release and where that was.
PlannedRelease next_release(const Season& season, const Ledger& ledger) {
    const auto& last = *ledger.released().back().release->trip;
    std::set<Id> gone;
    for (const auto& trip : season.trips.rows())
        gone.insert(trip.load);
    PlannedRelease planned;
    for (const auto& load : season.loads.rows()) {
        if (load.loading_end && !gone.contains(load.id)) planned.load = load.id;
    }
    if (!planned.load) planned.load = last.load;
    planned.at = ledger.released().back().at + ms_per_hour;
    planned.lat = last.lat;
    planned.lon = last.lon;
    planned.position_u_m = 5;
    planned.ground = last.ground;
    planned.cell = last.cell;
    planned.wave_height_m = 0.8;
    return planned;
}

/// Judges each instant of the history at which something was added under a rolling limit.
std::size_t all_rolling(const Ledger& ledger) {
    std::size_t moments = 0;
    for (const auto& condition : ledger.season().conditions.rows()) {
        if (condition.kind != "quantity") continue;
        const auto quantity = quantity_from(condition, ledger.season().zone);
        if (!quantity) continue;
        const auto kind = quantity->window.kind;
        if (kind != WindowKind::rolling && kind != WindowKind::mean) continue;
        each_moment(ledger, condition, *quantity, std::nullopt, ledger.released().back().at,
                    [&](const LimitMoment&) { ++moments; });
    }
    return moments;
}

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
    const Season season = read_season(*book);
    times.ledger = median_seconds([&] { Ledger once(season); });
    const Ledger ledger(season);
    times.trips = season.trips.size();
    const auto planned = next_release(season, ledger);
    CheckState verdict = CheckState::clear;
    std::size_t reasons = 0, moments = 0, rows = 0, findings = 0;
    times.check = median_seconds([&] {
        const auto checked = checked_release(*book, ledger, planned, planned.at);
        verdict = checked->verdict;
        reasons = checked->reasons.size();
    });
    times.board = median_seconds([&] {
        TripTracks tracks(season, [](const std::string&) { return std::nullopt; });
        const auto made = board(*book, ledger, tracks, planned.at);
        rows = made.rows.size();
        findings = 0;
        for (const auto& row : made.rows)
            findings += row.findings.size();
    });
    times.rolling = median_seconds([&] { moments = all_rolling(ledger); });
    const auto told = [&](const std::string& what, double seconds) {
        fmt::print("  {:<62} {:8.1f} ms = {:6.1f} SUMs\n", what, seconds * 1e3, seconds / times.sum);
    };
    fmt::print("{}: {} trips, {} conditions\n", path, times.trips, season.conditions.size());
    told("one SUM over the trips", times.sum);
    told("the ledger, made once", times.ledger);
    told(fmt::format("a release check ({}, {} reasons)", check_text(verdict), reasons), times.check);
    told(fmt::format("the board ({} rows, {} findings)", rows, findings), times.board);
    told(fmt::format("all rolling windows of the history ({} instants)", moments), times.rolling);
    return times;
}

}  // namespace

int main(int argc, char** argv) {
    return bench::over_two_books(
        argc, argv, "bench_conditions", measure, [](const auto& small, const auto& large) {
            fmt::print(
                "growth for {:.1f} times the trips: SUM {:.1f}, ledger {:.1f}, release check {:.1f}, board "
                "{:.1f}, rolling windows {:.1f} times\n",
                static_cast<double>(large.trips) / static_cast<double>(small.trips), large.sum / small.sum,
                large.ledger / small.ledger, large.check / small.check, large.board / small.board,
                large.rolling / small.rolling);
        });
}
