// SPDX-License-Identifier: GPL-3.0-or-later
// Limits worked out afresh for every window, in the words of consent-rules.md and with no code of model/.
#pragma once

#include <algorithm>
#include <optional>
#include <set>
#include <vector>

#include "tests/property/consent_plain_clock.h"

namespace spoilbook::plain {

/// One release. Numbers name ground, cell, material, barge, tug; −1: none.
struct Release {
    std::int64_t at = 0;
    int trip = 0, ground = -1, cell = -1, material = -1, barge = -1, tug = -1;
    double share = 1;
    std::optional<double> in_situ_m3, hopper_m3;  ///< of the whole load
    std::optional<double> hours;
};

enum class Span { term, day, week, month, year, consent_year, rolling, mean, campaign, phase };
enum class What { in_situ_m3, hopper_m3, trips, days, hours };
enum class Each { none, ground, cell, material, barge };

/// One version of one condition.
struct Limit {
    What what = What::in_situ_m3;
    Span span = Span::term;
    int months = 0, days = 0;  ///< a rolling window's length
    int years = 1;             ///< a mean's
    Each each = Each::none;
    std::vector<int> grounds, cells, materials, barges;  ///< scope; empty: any
    bool at_most = true;
    std::optional<double> value, share, of, floor;
    double reserve = 0;
    std::optional<std::int64_t> unlocked;
    std::optional<std::int64_t> from, to;  ///< in force in [from, to)
};

/// What a season says beside its releases.
struct Frame {
    std::optional<std::int64_t> commences;
    int year_month = 1, year_day = 1;  ///< year_starts
    std::int64_t phase_from = 0, phase_to = 0;
    std::vector<std::pair<std::int64_t, std::int64_t>> campaigns;  ///< ascending, the second one excluded
};

struct Answer {
    double used = 0;
    std::size_t unknown = 0;
    std::optional<double> limit;
};

inline bool in(const std::vector<int>& scope, int number) {
    return scope.empty() || std::find(scope.begin(), scope.end(), number) != scope.end();
}

inline bool in_scope(const Limit& limit, const Release& release) {
    return in(limit.grounds, release.ground) && in(limit.cells, release.cell) &&
           in(limit.materials, release.material) && in(limit.barges, release.barge);
}

inline int member_of(const Limit& limit, const Release& release) {
    switch (limit.each) {
        case Each::ground:
            return release.ground;
        case Each::cell:
            return release.cell;
        case Each::material:
            return release.material;
        case Each::barge:
            return release.barge;
        case Each::none:
            break;
    }
    return -1;
}

inline bool lasts(const Limit& limit, const Frame& frame, std::int64_t t) {
    if (limit.span == Span::phase) return frame.phase_from <= t && t < frame.phase_to;
    if (limit.span != Span::campaign) return true;
    return std::any_of(frame.campaigns.begin(), frame.campaigns.end(),
                       [t](const auto& one) { return one.first <= t && t < one.second; });
}

/// Whether something at `at` counts in the window that the limit opens at t.
inline bool counts(const Limit& limit, const Frame& frame, std::int64_t at, std::int64_t t) {
    if (at > t) return false;
    const std::tm wall = Clock::local(t);
    std::tm first = wall;
    switch (limit.span) {
        case Span::term:
            return !frame.commences || at >= *frame.commences;
        case Span::day:
            return at >= Clock::midnight(wall);
        case Span::week:
            return at >= Clock::midnight(wall, -((wall.tm_wday + 6) % 7));
        case Span::month:
            first.tm_mday = 1;
            return at >= Clock::midnight(first);
        case Span::year:
            first.tm_mday = 1;
            first.tm_mon = 0;
            return at >= Clock::midnight(first);
        case Span::consent_year:
            first.tm_mon = frame.year_month - 1;
            first.tm_mday = frame.year_day;
            if (std::pair(wall.tm_mon, wall.tm_mday) < std::pair(first.tm_mon, first.tm_mday))
                --first.tm_year;
            return at >= Clock::midnight(first);
        case Span::rolling:
            return at > Clock::earlier(t, limit.months, limit.days);
        case Span::mean:
            return at > Clock::earlier(t, 12 * limit.years, 0);
        case Span::phase:
            return frame.phase_from <= at && at < frame.phase_to;
        case Span::campaign:
            break;
    }
    std::optional<std::pair<std::int64_t, std::int64_t>> last;
    for (const auto& one : frame.campaigns) {
        if (one.first <= t) last = one;
    }
    return last && last->first <= at && at < last->second;
}

inline std::optional<double> amount(const Limit& limit, const Release& release) {
    if (limit.what == What::hours) return release.hours;
    const auto& whole = limit.what == What::hopper_m3 ? release.hopper_m3 : release.in_situ_m3;
    return whole ? std::optional(*whole * release.share) : std::nullopt;
}

/// What the window at t holds of one member; of all in scope where `member` is nothing.
inline Answer sum(const Limit& limit, const Frame& frame, const std::vector<Release>& releases,
                  std::optional<int> member, std::int64_t t) {
    Answer answer;
    std::set<std::int64_t> different, unknown;
    for (const auto& release : releases) {
        if (!in_scope(limit, release) || !counts(limit, frame, release.at, t)) continue;
        if (member && member_of(limit, release) != *member) continue;
        if (limit.what == What::trips)
            different.insert(release.trip);
        else if (limit.what == What::days)
            different.insert(Clock::midnight(Clock::local(release.at)));
        else if (const auto known = amount(limit, release))
            answer.used += *known;
        else
            unknown.insert(release.trip);
    }
    answer.used += static_cast<double>(different.size());
    answer.unknown = unknown.size();
    if (limit.span == Span::mean) answer.used /= limit.years;
    return answer;
}

inline Answer judge(const Limit& limit, const Frame& frame, const std::vector<Release>& releases, int member,
                    std::int64_t t) {
    Answer answer = sum(limit, frame, releases, member, t);
    if (limit.value) {
        const bool locked = limit.reserve > 0 && (!limit.unlocked || t < *limit.unlocked);
        answer.limit = *limit.value - (locked ? limit.reserve : 0);
        return answer;
    }
    const double total = limit.of ? *limit.of : sum(limit, frame, releases, std::nullopt, t).used;
    answer.used = total > 0 ? answer.used / total : 0;
    if (!limit.floor || total >= *limit.floor) answer.limit = limit.share;
    return answer;
}

/// The earliest release in scope at which some version in force then found its window over.
inline std::optional<std::int64_t> first_over(const std::vector<Limit>& versions, const Frame& frame,
                                              const std::vector<Release>& releases, int member,
                                              std::int64_t as_at) {
    std::optional<std::int64_t> first;
    for (const auto& release : releases) {
        for (const auto& limit : versions) {
            const bool in_force =
                (!limit.from || *limit.from <= release.at) && (!limit.to || release.at < *limit.to);
            if (!in_force || release.at > as_at || !limit.at_most) continue;
            if (!in_scope(limit, release) || !lasts(limit, frame, release.at)) continue;
            const Answer answer = judge(limit, frame, releases, member, release.at);
            const bool over = answer.limit && answer.used > *answer.limit * (1 + 1e-9);
            if (over && (!first || release.at < *first)) first = release.at;
        }
    }
    return first;
}

}  // namespace spoilbook::plain
