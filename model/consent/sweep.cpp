// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/sweep.h"

#include <algorithm>
#include <cmath>

#include "model/consent/random_parts.h"

namespace spoilbook {

Sweep::Sweep(const std::vector<Count>& counts, int members, Adding adding)
    : counts_(counts), adding_(adding), sums_(static_cast<std::size_t>(members) + 1) {
    if (adding != Adding::distinct) return;
    std::uint32_t keys = 0;
    for (const auto& count : counts)
        keys = std::max(keys, count.key + 1);
    for (auto& member_sum : sums_)
        member_sum.times_held.resize(keys, 0);
    all_.times_held.resize(keys, 0);
}

void Sweep::put(const Count& count, bool in) {
    ++moves_;
    put(count, in, sums_[static_cast<std::size_t>(count.member) + 1]);
    put(count, in, all_);
}

void Sweep::put(const Count& count, bool in, MemberSum& member_sum) const {
    if (adding_ == Adding::amounts || count.opening) {
        member_sum.sum +=
            in ? static_cast<long double>(count.amount.value) : -static_cast<long double>(count.amount.value);
        return;
    }
    auto& held = member_sum.times_held[count.key];
    if (in && held++ == 0) ++member_sum.distinct;
    if (!in && --held == 0) --member_sum.distinct;
}

bool Sweep::move_to(Instant t, const Window& window) {
    bool took_back = false;
    while (first_ > 0 && window.begins_by(counts_[first_ - 1].at)) {
        put(counts_[--first_], true);
        took_back = true;
    }
    while (next_ < counts_.size() && counts_[next_].at <= t)
        put(counts_[next_++], true);
    while (first_ < next_ && !window.begins_by(counts_[first_].at))
        put(counts_[first_++], false);
    if (first_ != next_) return took_back;
    for (auto& member_sum : sums_)
        member_sum.sum = 0;  // an empty window holds exactly nothing
    all_.sum = 0;
    return took_back;
}

double Sweep::of(int member) const {
    return value_of(sums_[static_cast<std::size_t>(member) + 1]);
}

bool Sweep::holds(std::optional<int> member, std::uint32_t key) const {
    const auto& held = (member ? sums_[static_cast<std::size_t>(*member) + 1] : all_).times_held;
    return key < held.size() && held[key] > 0;
}

namespace {

void keep_each_once(std::vector<std::uint32_t>& numbers) {
    if (!std::is_sorted(numbers.begin(), numbers.end())) std::sort(numbers.begin(), numbers.end());
    numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
}

}  // namespace

Used used_in(const std::vector<Count>& counts, std::optional<int> member, Adding adding, const Window& window,
             Instant t) {
    Total total;
    RandomParts random;
    std::vector<std::uint32_t> keys, unknown;
    for (const auto& count : counts) {
        if (count.at > t) break;
        if ((member && count.member != *member) || !window.counts(count.at, t)) continue;
        if (adding == Adding::amounts || count.opening) {
            total.add(count.amount);
            if (count.opening)
                random.add_independent(count.amount.u_random);
            else
                random.add_of_load(count.load, count.amount.u_random);
        } else {
            keys.push_back(count.key);
        }
        if (count.unknown) unknown.push_back(count.load);
    }
    keep_each_once(keys);
    keep_each_once(unknown);
    Used used{total.estimate(), std::move(unknown)};
    used.used.u_random = random.u();
    used.used.value += static_cast<double>(keys.size());
    return used;
}

Estimate share_in(const std::vector<Count>& counts, int member, Adding adding, const Window& window,
                  Instant t, double total) {
    if (total <= 0) return {};
    const double share = used_in(counts, member, adding, window, t).used.value / total;
    Total weighted;
    RandomParts random;
    for (const auto& count : counts) {
        if (count.at > t) break;
        if (!window.counts(count.at, t) || (adding == Adding::distinct && !count.opening)) continue;
        const double weight = ((count.member == member ? 1 : 0) - share) / total;
        weighted.add(count.amount, weight);
        if (count.opening)
            random.add_independent(count.amount.u_random * weight);
        else
            random.add_of_load(count.load, count.amount.u_random * weight);
    }
    Estimate estimate = weighted.estimate();
    estimate.value = share;
    estimate.u_random = random.u();
    return estimate;
}

bool exceeds(double used, double limit) {
    return used - limit > 1e-9 * std::max(1.0, std::fabs(limit));
}

}  // namespace spoilbook
