// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/limit_path.h"

#include <algorithm>
#include <set>
#include <tuple>

#include "model/consent/count_list.h"

namespace spoilbook {

namespace {

/// What of the counts goes into one member's use; −1 is all of it where the limit has no members.
std::vector<Count> own_counts(const Ledger& ledger, const LimitState& state) {
    const auto members = members_of(state.quantity, ledger.season());
    int own = -1;
    for (std::size_t i = 0; i < members.size(); ++i) {
        if (state.member && members[i].id == state.member->id) own = static_cast<int>(i);
    }
    auto counts = counts_of(state.quantity, members, *state.condition, ledger);
    std::erase_if(counts, [&](const Count& count) { return count.at > state.as_at || count.member != own; });
    if (adding_of(state.quantity) == Adding::amounts) return counts;
    std::set<std::uint32_t> seen;
    for (auto& count : counts) {
        if (!count.opening) count.amount.value = seen.insert(count.key).second ? 1 : 0;
    }
    return counts;
}

/// What counted on each day of the log, openings left out.
std::vector<double> by_day(const std::vector<Count>& counts, const std::vector<Instant>& evenings) {
    std::vector<double> amounts(evenings.size());
    for (const auto& count : counts) {
        const auto evening = std::lower_bound(evenings.begin(), evenings.end(), count.at);
        const bool before = evenings.empty() || count.at <= evenings.front() - ms_per_day;
        if (!count.opening && !before && evening != evenings.end())
            amounts[static_cast<std::size_t>(evening - evenings.begin())] += count.amount.value;
    }
    return amounts;
}

/// [first, past the last) of what lies in a window, of things in order of time.
template <class T, class At>
std::pair<std::size_t, std::size_t> held(const std::vector<T>& things, const Window& window, const At& at) {
    const auto first = std::partition_point(things.begin(), things.end(),
                                            [&](const T& thing) { return !window.begins_by(at(thing)); });
    const auto last = std::partition_point(first, things.end(), [&](const T& thing) {
        return !window.end || at(thing) < *window.end || (window.end_counts && at(thing) == *window.end);
    });
    return {static_cast<std::size_t>(first - things.begin()),
            static_cast<std::size_t>(last - things.begin())};
}

}  // namespace

LimitPath::LimitPath(const Ledger& ledger, const LimitState& state, const std::vector<Instant>& evenings,
                     const std::vector<Instant>& log_evenings) {
    const Quantity& quantity = state.quantity;
    const bool so_far = quantity.share_of_total && !quantity.of_value;
    known_ = quantity.at_most && !so_far && quantity.window.kind != WindowKind::trip;
    if (!known_) return;
    of_days_ = quantity.measure == LimitMeasure::days;
    if (state.used > 0) relative_u_ = state.used_u / state.used;
    const auto counts = own_counts(ledger, state);
    by_day_ = by_day(counts, log_evenings);
    std::vector<double> sums{0};
    for (const auto& count : counts)
        sums.push_back(sums.back() + count.amount.value);
    const double years = quantity.window.kind == WindowKind::mean ? quantity.window.n : 1;
    const double unit = quantity.of_value.value_or(1) * years;
    const Consent consent = state.consent != nullptr ? *state.consent : Consent{};
    for (const Instant evening : evenings) {
        Stand stand;
        const auto window = window_at(quantity.window, consent, ledger.season(), evening);
        if (window && in_force(*state.condition, evening)) {
            const auto [from, to] = held(counts, *window, [](const Count& count) { return count.at; });
            stand.past = sums[to] - sums[from];
            std::tie(stand.first, stand.last) = held(evenings, *window, [](Instant at) { return at; });
            if (const auto limit = limit_at(quantity, evening)) stand.limit = *limit * unit;
        }
        stands_.push_back(stand);
    }
}

int LimitPath::first_over(const DaysDrawn& drawn) const {
    const double off = 1 + drawn.error * relative_u_;
    const double factor = of_days_ ? 1 : drawn.factor;
    std::vector<double> sums{0};
    for (std::size_t i = 0; i < stands_.size(); ++i) {
        const int like = drawn.log_day[i];
        sums.push_back(sums.back() + (like < 0 ? 0 : factor * by_day_[static_cast<std::size_t>(like)]));
        const Stand& stand = stands_[i];
        if (!stand.limit) continue;
        // An evening after day i has not come yet, though the window may hold it.
        const std::size_t last = std::min(stand.last, i + 1);
        const double to_come = last > stand.first ? sums[last] - sums[stand.first] : 0;
        if (exceeds(off * (stand.past + to_come), *stand.limit)) return static_cast<int>(i);
    }
    return -1;
}

}  // namespace spoilbook
