// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/standing.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "model/unit/calendar.h"
#include "model/unit/time_text.h"

namespace spoilbook {

LimitStanding standing_of(const LimitState& state) {
    if (!state.limit) return LimitStanding::no_limit;
    if (!state.quantity.at_most) {
        if (!exceeds(*state.limit, state.used)) return LimitStanding::within;
        const bool told = state.unknown == 0 && !state.hangs_on_records();
        return told ? LimitStanding::below : LimitStanding::cannot_tell;
    }
    if (exceeds(state.used, *state.limit)) return LimitStanding::over;
    if (state.unknown > 0 || state.hangs_on_records()) return LimitStanding::cannot_tell;
    if (state.first_over) return LimitStanding::was_over;
    return warned_at(state) ? LimitStanding::warned : LimitStanding::within;
}

std::string_view standing_word(LimitStanding standing) {
    static constexpr std::array words{"no limit yet", "within", "warned",     "was over",
                                      "below",        "over",   "cannot tell"};
    return words.at(static_cast<std::size_t>(standing));
}

std::optional<double> warned_at(const LimitState& state) {
    const auto share = state.used_share();
    std::optional<double> highest;
    for (const double at : state.quantity.warn_at) {
        if (share && *share >= at) highest = std::max(highest.value_or(at), at);
    }
    return highest;
}

std::string standing_text(const LimitState& state) {
    const auto standing = standing_of(state);
    std::string said(standing_word(standing));
    // 0.95 · 100 is not quite 95 in binary digits.
    if (standing == LimitStanding::warned) said += fmt::format(" at {:.4g} %", *warned_at(state) * 100);
    return said;
}

const LimitState* least_headroom(const std::vector<LimitState>& states) {
    const LimitState* least = nullptr;
    for (const auto& state : states) {
        if (!state.quantity.at_most || !state.used_share()) continue;
        if (least == nullptr || *state.used_share() > *least->used_share()) least = &state;
    }
    return least;
}

std::optional<double> monthly_limit(const std::vector<LimitState>& states) {
    std::optional<double> least;
    for (const auto& state : states) {
        const Quantity& q = state.quantity;
        const bool monthly = q.window.kind == WindowKind::calendar && q.window.unit == WindowUnit::months;
        const bool all = q.scope.claims.empty() && q.scope.materials.empty() && q.scope.classes.empty() &&
                         q.scope.cells.empty() && q.scope.plant.empty() && q.each_of == EachOf::none &&
                         q.scope.activity == Activity::release && q.measure == LimitMeasure::in_situ_m3;
        if (!monthly || !all || !q.at_most || q.share_of_total || !state.limit) continue;
        least = least ? std::min(*least, *state.limit) : *state.limit;
    }
    return least;
}

std::optional<PlanStanding> plan_standing(const BurnDown& burn) {
    std::optional<PlanStanding> last;
    for (const auto& day : burn.days) {
        if (!day.remaining_m3) continue;
        last = PlanStanding{day.date, *day.remaining_m3, day.plan_m3, std::nullopt};
        if (day.plan_m3) last->ahead_m3 = *day.plan_m3 - *day.remaining_m3;
    }
    return last;
}

std::vector<std::string> months_until(const Ledger& ledger, Instant as_at) {
    const Season& season = ledger.season();
    std::optional<Instant> first;
    const auto earlier = [&first](Instant at) { first = first ? std::min(*first, at) : at; };
    if (!ledger.released().empty()) earlier(ledger.released().front().at);
    for (const auto& consent : season.consents.rows()) {
        if (consent.commences) earlier(*consent.commences);
    }
    std::vector<std::string> months;
    if (!first || as_at < *first) return months;
    const Day begin = season.zone.day_of(*first);
    Day day = season.zone.day_of(as_at);
    day.day = 1;
    const Day from{begin.year, begin.month, 1};
    for (; from <= day; day = plus_months(day, -1))
        months.push_back(month_text(day));
    return months;
}

std::vector<VolumeRow> with_nil_months(const std::vector<VolumeRow>& rows) {
    std::vector<VolumeRow> all;
    std::optional<Day> next;
    for (const auto& row : rows) {
        const auto first = row.keys.empty() || !row.keys.front() ? Checked<Day>(Refusal{})
                                                                 : parse_day(*row.keys.front() + "-01");
        if (first) {
            for (; next && *next < *first; next = plus_months(*next, 1)) {
                VolumeRow nil;
                nil.keys = {month_text(*next)};
                nil.amounts = {Estimate{}, Estimate{}, Estimate{}, Estimate{}};
                all.push_back(std::move(nil));
            }
            next = plus_months(*first, 1);
        }
        all.push_back(row);
    }
    return all;
}

}  // namespace spoilbook
