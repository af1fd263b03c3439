// SPDX-License-Identifier: GPL-3.0-or-later
// bench_backtest BOOK: how often the forecast's 80 % band held. On every Monday of the book's log with 13
// weeks before it, asks when the next 10 000 and 20 000 in-situ m³ would be through, and looks when they
// were.
#include <fmt/format.h>

#include <cstdio>

#include "model/book/season.h"
#include "model/progress/forecast.h"
#include "model/progress/work_days.h"
#include "model/unit/calendar.h"

using namespace spoilbook;

namespace {

struct Score {
    int asked = 0, early = 0, within = 0, late = 0;
};

/// The first day by whose end so much more than by the end of days[now − 1] was dredged.
std::optional<Day> reached(const std::vector<WorkDay>& days, std::size_t now, double more) {
    double sum = 0;
    for (std::size_t i = now; i < days.size(); ++i) {
        sum += days[i].in_situ_m3;
        if (sum >= more) return days[i].date;
    }
    return std::nullopt;
}

/// The season with one claim, planned so that `more` is left.
Season with_plan(const Season& season, double dredged, double more) {
    Season planned = season;
    Claim claim;
    claim.id.bytes[0] = 1;
    claim.planned_in_situ_m3 = dredged + more;
    planned.claims = {};
    planned.claims.add(claim);
    return planned;
}

}  // namespace

int main(int argc, char** argv) {
    if (argc != 2) {
        fmt::print(stderr, "usage: bench_backtest BOOK\n");
        return 2;
    }
    const auto book = Book::open_to_read(argv[1]);
    const Season season = read_season(book.value());
    const Ledger ledger(season);
    const auto end = ledger.dredged().back().at;
    const auto days = work_days(ledger, end);
    for (const double more : {10000.0, 20000.0}) {
        Score score;
        double dredged = 0;
        for (std::size_t now = 0; now < days.size(); ++now) {
            const auto came = reached(days, now, more);
            if (now >= 91 && iso_weekday(days[now].date) == 1 && came) {
                const Season planned = with_plan(season, dredged, more);
                const Ledger asked_of(planned);
                ForecastAsked asked;
                asked.as_at = season.zone.day_start(days[now].date) - 1;
                const auto made = forecast(asked_of, asked);
                if (made.why_none.empty() && made.target.p10 && made.target.p90) {
                    ++score.asked;
                    if (*came < *made.target.p10)
                        ++score.early;
                    else if (*came > *made.target.p90)
                        ++score.late;
                    else
                        ++score.within;
                }
            }
            dredged += days[now].in_situ_m3;
        }
        fmt::print(
            "next {:.0f} m3: asked {} times, within the 80 % band {} ({:.0f} %), before it {}, after it {}\n",
            more, score.asked, score.within, 100.0 * score.within / std::max(1, score.asked), score.early,
            score.late);
    }
    return 0;
}
