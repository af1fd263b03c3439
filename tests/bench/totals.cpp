// SPDX-License-Identifier: GPL-3.0-or-later
// bench_totals BOOK [LARGER_BOOK]: the season's totals with full uncertainty, against one SQL SUM of numbers
// that are stored; with a larger book also how both grow. Books come from sample-db/generate --season SEED
// --trips N.
#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include "model/answer/reconciliation.h"
#include "model/answer/volumes.h"
#include "model/book/book.h"
#include "model/book/season.h"
#include "tests/bench/median.h"
#include "tests/bench/two_books.h"

using namespace spoilbook;
using spoilbook::bench::median_seconds;

namespace {

struct Times {
    std::size_t loads = 0;
    double sum = 0, value = 0, totals = 0, by_claim = 0, dredged = 0;
};

/// Every claim over the whole season, as reconciliation adds them up.
std::vector<ClaimSpan> whole_season(const Season& season) {
    std::vector<ClaimSpan> spans;
    for (const auto& claim : season.claims.rows())
        spans.push_back({claim.id, Instant{0}, Instant{253402300799000}});
    return spans;
}

Times measure(const char* path) {
    Times times;
    SQLite::Database db(path, SQLite::OPEN_READONLY);
    times.sum = median_seconds([&] {
        SQLite::Statement sum(db, "SELECT sum(stated_hopper_m3), count(*) FROM load");
        sum.executeStep();
    });
    const auto book = Book::open_to_read(path);
    const Season season = read_season(*book);
    times.loads = season.loads.size();
    std::unique_ptr<Ledger> ledger;
    times.value = median_seconds([&] { ledger = std::make_unique<Ledger>(season); });
    const Instant end = ledger->dredged().empty() ? Instant{} : ledger->dredged().back().at;
    double u = 0;
    times.totals = median_seconds([&] { u = volumes(*ledger, end, {}).front().amounts.in_situ_m3->u(); });
    times.by_claim =
        median_seconds([&] { u += static_cast<double>(volumes(*ledger, end, {GroupBy::claim}).size()); });
    const auto spans = whole_season(season);
    times.dredged = median_seconds([&] { u += loads_of(*ledger, spans, end).front().in_situ_m3.u(); });
    fmt::print(
        "{}: {} loads\n  one SUM {:.4f} s; value every load {:.3f} s = {:.1f} SUMs; totals with uncertainty "
        "{:.3f} s = {:.1f} SUMs; by claim {:.3f} s = {:.1f}; for reconciliation {:.3f} s = {:.1f} ({:.0f})\n",
        path, times.loads, times.sum, times.value, times.value / times.sum, times.totals,
        times.totals / times.sum, times.by_claim, times.by_claim / times.sum, times.dredged,
        times.dredged / times.sum, u);
    return times;
}

}  // namespace

int main(int argc, char** argv) {
    return bench::over_two_books(
        argc, argv, "bench_totals", measure, [](const auto& small, const auto& large) {
            fmt::print(
                "growth for {:.1f} times the loads: SUM {:.1f}, value {:.1f}, totals {:.1f}, by claim "
                "{:.1f}, "
                "for "
                "reconciliation {:.1f} times\n",
                static_cast<double>(large.loads) / static_cast<double>(small.loads), large.sum / small.sum,
                large.value / small.value, large.totals / small.totals, large.by_claim / small.by_claim,
                large.dredged / small.dredged);
        });
}
