// SPDX-License-Identifier: GPL-3.0-or-later
// bench_conditions BOOK [LARGER_BOOK]: the ledger (every load valued, made once for all that follows), one
// release check, the whole conditions board, and every rolling window of the whole history judged anew, each
// against one hand-written SUM over the book's trips; with a second, larger book also how all of them grow.
// The rolling windows have a second yardstick, the same sums over bare arrays of instants and amounts, and
// their steps are counted: a time that grows faster than the steps is the memory's.
// Books come from sample-db/generate --season SEED --trips N [--mixed].
//
// bench_conditions --walk BOOK walks through the rolling windows once and does nothing else that could be
// left out: for counting instructions, as with
// valgrind --tool=callgrind --toggle-collect='spoilbook::each_moment*' bench_conditions --walk BOOK
#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include <set>
#include <string_view>

#include "model/answer/board.h"
#include "model/answer/checked_release.h"
#include "model/book/season.h"
#include "model/consent/first_over.h"
#include "tests/bench/median.h"
#include "tests/bench/two_books.h"

using namespace spoilbook;
using spoilbook::bench::median_seconds;

namespace {

struct Walked {
    std::size_t limits = 0, instants = 0;
    WalkWork work;
};

struct Times {
    std::size_t trips = 0;
    double sum = 0, ledger = 0, check = 0, board = 0, rolling = 0, bare = 0;
    Walked walked;
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
Walked all_rolling(const Ledger& ledger) {
    Walked walked;
    for (const auto& condition : ledger.season().conditions.rows()) {
        if (condition.kind != "quantity") continue;
        const auto quantity = quantity_from(condition, ledger.season().zone);
        if (!quantity) continue;
        const auto kind = quantity->window.kind;
        if (kind != WindowKind::rolling && kind != WindowKind::mean) continue;
        const auto work = each_moment(ledger, condition, *quantity, std::nullopt, ledger.released().back().at,
                                      [&](const LimitMoment&) { ++walked.instants; });
        ++walked.limits;
        walked.work.counts += work.counts;
        walked.work.moves += work.moves;
    }
    return walked;
}

/// The least that a rolling window can be: instants and amounts ready in one array, a year of fixed length,
/// no limit, no scope and no calendar. Once for each of `limits`.
double bare_sums(const std::vector<std::pair<std::int64_t, double>>& amounts, std::size_t limits) {
    constexpr std::int64_t year_ms = 365 * ms_per_day;
    double most = 0;
    for (std::size_t i = 0; i < limits; ++i) {
        std::size_t first = 0;
        long double sum = 0;
        for (const auto& [at, amount] : amounts) {
            sum += amount;
            while (amounts[first].first <= at - year_ms)
                sum -= amounts[first++].second;
            most = std::max(most, static_cast<double>(sum));
        }
    }
    return most;
}

std::vector<std::pair<std::int64_t, double>> bare_amounts(const Ledger& ledger) {
    std::vector<std::pair<std::int64_t, double>> amounts;
    for (const auto& line : ledger.released()) {
        const auto* counted = counted_method(line, "", Measure::in_situ_m3);
        amounts.emplace_back(line.at.utc_ms,
                             counted == nullptr ? 0 : counted->in_situ_m3->value * line.share);
    }
    return amounts;
}

int walk_once(const char* path) {
    const auto book = Book::open_to_read(path);
    const Season season = read_season(*book);
    const Ledger ledger(season);
    const auto walked = all_rolling(ledger);
    fmt::print("{}: {} trips, {} rolling limits: {} counts read, {} moves, {} instants judged\n", path,
               season.trips.size(), walked.limits, walked.work.counts, walked.work.moves, walked.instants);
    return 0;
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
    std::size_t reasons = 0, rows = 0, findings = 0;
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
    times.rolling = median_seconds([&] { times.walked = all_rolling(ledger); });
    const auto& walked = times.walked;
    const auto amounts = bare_amounts(ledger);
    double most = 0;
    times.bare = median_seconds([&] { most = bare_sums(amounts, walked.limits); });
    const auto told = [&](const std::string& what, double seconds) {
        fmt::print("  {:<62} {:8.1f} ms = {:6.1f} SUMs\n", what, seconds * 1e3, seconds / times.sum);
    };
    fmt::print("{}: {} trips, {} conditions\n", path, times.trips, season.conditions.size());
    told("one SUM over the trips", times.sum);
    told("the ledger, made once", times.ledger);
    told(fmt::format("a release check ({}, {} reasons)", check_text(verdict), reasons), times.check);
    told(fmt::format("the board ({} rows, {} findings)", rows, findings), times.board);
    told(fmt::format("all rolling windows of the history ({} instants)", walked.instants), times.rolling);
    told(fmt::format("as many bare running sums (most {:.0f} m3)", most), times.bare);
    fmt::print("  rolling windows: {} limits, {} counts read, {} moves, {:.0f} ns a move, {:.1f} bare sums\n",
               walked.limits, walked.work.counts, walked.work.moves,
               times.rolling * 1e9 / static_cast<double>(walked.work.moves), times.rolling / times.bare);
    return times;
}

}  // namespace

int main(int argc, char** argv) {
    if (argc == 3 && std::string_view(argv[1]) == "--walk") return walk_once(argv[2]);
    return bench::over_two_books(
        argc, argv, "bench_conditions", measure, [](const auto& small, const auto& large) {
            const auto times = [](auto a, auto b) { return static_cast<double>(b) / static_cast<double>(a); };
            fmt::print(
                "growth for {:.1f} times the trips: SUM {:.1f}, ledger {:.1f}, release check {:.1f}, board "
                "{:.1f}, rolling windows {:.1f}, bare running sums {:.1f} times\n"
                "work of the rolling windows: counts read {:.2f}, moves {:.2f}, instants judged {:.2f} "
                "times\n",
                times(small.trips, large.trips), times(small.sum, large.sum),
                times(small.ledger, large.ledger), times(small.check, large.check),
                times(small.board, large.board), times(small.rolling, large.rolling),
                times(small.bare, large.bare), times(small.walked.work.counts, large.walked.work.counts),
                times(small.walked.work.moves, large.walked.work.moves),
                times(small.walked.instants, large.walked.instants));
        });
}
