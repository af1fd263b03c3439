// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/rolling_turns.h"

#include <algorithm>

#include "model/unit/calendar.h"

namespace spoilbook {

namespace {

constexpr std::int64_t longest_ms = 40LL * 366 * ms_per_day;
// A window's start goes back by up to three days where months clamp, and by less where clocks change.
constexpr std::int64_t back_ms = 5 * ms_per_day;

/// Cuts time into pieces in which the window keeps its length to the millisecond.
class Pieces {
 public:
    Pieces(const WindowRule& rule, const Season& season) : rule_(rule), season_(season) {}

    [[nodiscard]] std::int64_t length_at(Instant t) const {
        return t - *window_at(rule_, {}, season_, t)->start;
    }

    /// The end of the piece that begins at t: the day's end, or where in the day the length changes. It
    /// changes once a day at most: clocks are changed once, here and where the window begins.
    [[nodiscard]] Instant end_of(Instant t) const {
        const auto& zone = season_.zone;
        const Instant day_end = zone.day_start(plus_days(zone.day_of(t), 1));
        const auto length = length_at(t);
        if (length_at(day_end - 1) == length) return day_end;
        Instant same = t;
        Instant other = day_end - 1;
        while (other - same > 1) {
            const Instant middle = same + (other - same) / 2;
            (length_at(middle) == length ? same : other) = middle;
        }
        return other;
    }

 private:
    const WindowRule& rule_;
    const Season& season_;
};

}  // namespace

std::vector<Instant> rolling_turns(const WindowRule& rule, const Season& season,
                                   const std::vector<Count>& counts, Instant at) {
    const Pieces pieces(rule, season);
    std::vector<Instant> turns;
    if (counts.empty()) return turns;
    const Instant newest = counts.back().at;
    for (Instant begin = at + 1; begin - at < longest_ms;) {
        const Instant end = pieces.end_of(begin);
        const auto length = pieces.length_at(begin);
        turns.push_back(begin);
        // A count leaves (t − length, t] at its own time + length.
        auto leaving = std::upper_bound(counts.begin(), counts.end(), begin - length,
                                        [](Instant t, const Count& count) { return t < count.at; });
        for (; leaving != counts.end() && leaving->at + length < end; ++leaving)
            turns.push_back(leaving->at + length);
        if (begin - length >= newest + back_ms) break;
        begin = end;
    }
    return turns;
}

}  // namespace spoilbook
