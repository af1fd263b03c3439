// SPDX-License-Identifier: GPL-3.0-or-later
// What the sweep says in one walk, held against adding up every window from the start.
#include <rapidcheck.h>
#include <catch2/catch.hpp>
#include <set>

#include "model/consent/sweep.h"
#include "model/unit/time_text.h"

using namespace spoilbook;

namespace {

constexpr int member_count = 3;

std::vector<Count> any_counts() {
    const auto n = *rc::gen::inRange(0, 60);
    const std::int64_t start = parse_instant("2025-01-20T00:00Z", Zone::utc())->utc_ms;
    std::vector<Count> counts;
    for (int i = 0; i < n; ++i) {
        Count count;
        // Coarse steps make equal instants and window edges common, the odd millisecond makes near misses.
        count.at = Instant{start + *rc::gen::inRange(0, 500) * 12 * ms_per_hour + *rc::gen::inRange(0, 2)};
        count.amount.value = *rc::gen::inRange(0, 4000) / 8.0;
        count.member = *rc::gen::inRange(-1, member_count);
        count.key = static_cast<std::uint32_t>(*rc::gen::inRange(0, 12));
        counts.push_back(count);
    }
    std::stable_sort(counts.begin(), counts.end(),
                     [](const Count& a, const Count& b) { return a.at < b.at; });
    return counts;
}

WindowRule any_rule() {
    WindowRule rule;
    rule.kind = *rc::gen::element(WindowKind::term, WindowKind::calendar, WindowKind::consent_year,
                                  WindowKind::rolling, WindowKind::phase);
    rule.unit = *rc::gen::element(WindowUnit::days, WindowUnit::weeks, WindowUnit::months, WindowUnit::years);
    rule.n = *rc::gen::inRange(1, 5);
    rule.from = parse_instant("2025-03-01T00:00Z", Zone::utc()).value();
    rule.to = parse_instant("2025-06-01T00:00Z", Zone::utc()).value();
    return rule;
}

/// The definition of consent-rules.md, word for word, with no memory of the window before.
double brute_force(const std::vector<Count>& counts, int member, Adding adding, const Window& window,
                   Instant t) {
    double sum = 0;
    std::set<std::uint32_t> keys;
    for (const auto& count : counts) {
        const bool after_start =
            !window.start || (window.start_counts ? count.at >= *window.start : count.at > *window.start);
        if (!after_start || count.at > t || count.member != member) continue;
        sum += count.amount.value;
        keys.insert(count.key);
    }
    return adding == Adding::amounts ? sum : static_cast<double>(keys.size());
}

}  // namespace

TEST_CASE("one walk through a season finds in each window what adding it up afresh finds", "[window]") {
    CHECK(rc::check([] {
        Season season;
        season.zone =
            *Zone::named(*rc::gen::element<std::string>("Pacific/Auckland", "Europe/Berlin", "UTC"));
        Consent consent;
        consent.year_starts = "03-01";
        const auto counts = any_counts();
        const auto rule = any_rule();
        const auto adding = *rc::gen::element(Adding::amounts, Adding::distinct);
        Sweep sweep(counts, member_count, adding);
        for (const auto& count : counts) {
            const auto window = window_at(rule, consent, season, count.at);
            if (!window || !window->counts(count.at, count.at)) continue;
            sweep.move_to(count.at, *window);
            for (int member = -1; member < member_count; ++member) {
                const double expected = brute_force(counts, member, adding, *window, count.at);
                RC_ASSERT(std::abs(sweep.of(member) - expected) < 1e-9);
                RC_ASSERT(std::abs(used_in(counts, member, adding, *window, count.at).used.value - expected) <
                          1e-9);
            }
        }
    }));
}

TEST_CASE("a walk moves a count only as it comes into the window or goes out of it", "[window]") {
    CHECK(rc::check([] {
        Season season;
        season.zone =
            *Zone::named(*rc::gen::element<std::string>("Pacific/Auckland", "Europe/Berlin", "UTC"));
        WindowRule rule;
        rule.kind = WindowKind::rolling;
        rule.unit = *rc::gen::element(WindowUnit::days, WindowUnit::months, WindowUnit::years);
        rule.n = *rc::gen::inRange(1, 5);
        const auto counts = any_counts();
        Sweep sweep(counts, member_count, Adding::amounts);
        std::vector<bool> held(counts.size());
        std::size_t changes = 0, back = 0;
        std::vector<bool> left(counts.size());
        for (const auto& judged : counts) {
            const auto window = *window_at(rule, {}, season, judged.at);
            sweep.move_to(judged.at, window);
            for (std::size_t i = 0; i < counts.size(); ++i) {
                const bool holds = window.counts(counts[i].at, judged.at);
                if (holds == held[i]) continue;
                ++changes;
                if (holds && left[i]) ++back;
                left[i] = !holds;
                held[i] = holds;
            }
            RC_ASSERT(sweep.moves() == changes);
        }
        RC_ASSERT(sweep.moves() <= 2 * counts.size() + 2 * back);
    }));
}

TEST_CASE("ten times the releases of twenty years are ten times the moves, and not a hundred", "[window]") {
    Season season;
    season.zone = *Zone::named("Pacific/Auckland");
    WindowRule rule;
    rule.kind = WindowKind::rolling;
    rule.n = 12;
    const auto start = *parse_instant("2006-01-01T00:00Z", Zone::utc());
    for (const std::int64_t n : {730, 7300, 73000}) {
        std::vector<Count> counts(static_cast<std::size_t>(n));
        for (std::int64_t i = 0; i < n; ++i)
            counts[static_cast<std::size_t>(i)].at = start + 7300 * ms_per_day * i / n;
        Sweep sweep(counts, 0, Adding::amounts);
        for (const auto& count : counts)
            sweep.move_to(count.at, *window_at(rule, {}, season, count.at));
        // In and out once, but for the last year's and what a few leap days and clock changes take back.
        CHECK(sweep.moves() > 19 * counts.size() / 10);
        CHECK(sweep.moves() < 20 * counts.size() / 10);
    }
}

TEST_CASE("a rolling window leaves out its first instant and takes in its last", "[window]") {
    Season season;
    season.zone = *Zone::named("Pacific/Auckland");
    WindowRule rule;
    rule.kind = WindowKind::rolling;
    rule.n = 12;
    const auto t = *parse_instant("2026-05-30T18:00+12:00", season.zone);
    const auto window = *window_at(rule, {}, season, t);
    CHECK(instant_text(*window.start, season.zone) == "2025-05-30T18:00:00+12:00");
    CHECK(!window.counts(*window.start, t));
    CHECK(window.counts(*window.start + 1, t));
    CHECK(window.counts(t, t));
    CHECK(!window.counts(t + 1, t));
}
