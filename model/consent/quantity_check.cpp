// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/quantity_check.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "model/consent/limit.h"

namespace spoilbook {

namespace {

CheckReason outcome(CheckState state, std::string why, std::optional<Instant> until = std::nullopt) {
    CheckReason reason;
    reason.state = state;
    reason.until = until;
    reason.why = std::move(why);
    return reason;
}

}  // namespace

QuantityCheck::QuantityCheck(const Ledger& ledger, const Condition& condition, const Quantity& quantity,
                             const Id& load, Instant at)
    : season_(ledger.season()), quantity_(quantity), at_(at) {
    for (const auto& line : ledger.released()) {
        if (line.load != nullptr && line.load->id == load) load_number_ = line.load_number;
    }
    const Consent* consent = season_.consents.find(condition.consent);
    if (consent != nullptr) consent_ = *consent;
    members_ = members_of(quantity, season_);
    counts_ = counts_of(quantity, members_, condition, ledger);
    window_ = window_at(quantity.window, consent_, season_, at);
}

bool QuantityCheck::own(const Count& count) const {
    return !count.opening && count.load == load_number_ && count.at == at_;
}

/// Used in the window that holds t; the planned load counts at t wherever t is, all else where it stands.
double QuantityCheck::used(int member, Instant t, bool with_own) const {
    const auto window = window_at(quantity_.window, consent_, season_, t);
    if (!window) return 0;
    std::vector<Count> held;
    for (const auto& count : counts_) {
        const bool trip_window = quantity_.window.kind == WindowKind::trip;
        if (own(count) ? !with_own : trip_window) continue;
        held.push_back(count);
        if (own(count))
            held.back().at = t;
        else if (count.at > at_)
            held.pop_back();
    }
    std::stable_sort(held.begin(), held.end(), [](const Count& a, const Count& b) { return a.at < b.at; });
    const auto total = [&](int of) { return used_in(held, of, adding_of(quantity_), *window, t).used.value; };
    const double years = quantity_.window.kind == WindowKind::mean ? quantity_.window.n : 1;
    if (!quantity_.share_of_total) return total(member) / years;
    double of = quantity_.of_value.value_or(0);
    if (quantity_.of_floor) {
        for (int i = -1; i < static_cast<int>(members_.size()); ++i)
            of += total(i);
    }
    return of > 0 && of >= quantity_.of_floor.value_or(0) ? total(member) / of : 0;
}

std::optional<double> QuantityCheck::limit_of(Instant t) const {
    return limit_at(quantity_, t);
}

CheckReason QuantityCheck::judge(int member) const {
    const auto limit = limit_of(at_);
    if (!limit) return outcome(CheckState::clear, "");
    const double total = used(member, at_, true);
    if (exceeds(total, *limit)) {
        const std::string what = member < 0 ? "" : " for " + members_[static_cast<std::size_t>(member)].name;
        return outcome(CheckState::hold,
                       fmt::format("with this load {:.1f} of {:.1f} would be used{}", total, *limit, what),
                       until(member));
    }
    const bool unknown = std::any_of(counts_.begin(), counts_.end(), [&](const Count& count) {
        return count.unknown && count.member == member && window_->counts(count.at, at_);
    });
    if (unknown) return outcome(CheckState::cannot_tell, "a load that counts cannot be valued");
    return outcome(CheckState::clear, "");
}

CheckReason QuantityCheck::reason() const {
    std::set<int> own_members;
    for (const auto& count : counts_) {
        if (own(count)) own_members.insert(count.member);
    }
    if (own_members.empty() || !window_ || !window_->counts(at_, at_)) return outcome(CheckState::clear, "");
    const bool unplaced = quantity_.each_of != EachOf::none && own_members.count(-1) > 0;
    CheckReason worst = outcome(CheckState::clear, "");
    if (unplaced) {
        // Not said which: it holds only where none has room.
        const bool room = !due_member().empty();
        worst = room ? outcome(CheckState::cannot_tell,
                               "it is not said which " + each_of_text(quantity_.each_of) + " it goes to")
                     : outcome(CheckState::hold,
                               "no " + each_of_text(quantity_.each_of) + " has room for this load");
    }
    for (const int member : own_members) {
        if (unplaced && member < 0) continue;
        auto judged = judge(member);
        if (judged.state > worst.state) worst = std::move(judged);
    }
    return worst;
}

double QuantityCheck::own_amount() const {
    double amount = 0;
    for (const auto& count : counts_) {
        if (own(count)) amount += adding_of(quantity_) == Adding::distinct ? 1 : count.amount.value;
    }
    return amount;
}

std::string QuantityCheck::due_member() const {
    const auto limit = limit_of(at_);
    const double of = quantity_.share_of_total && quantity_.of_value ? *quantity_.of_value : 1;
    std::string due;
    double least = 0;
    for (std::size_t i = 0; i < members_.size(); ++i) {
        const double before = used(static_cast<int>(i), at_, false);
        const bool fits = !limit || !exceeds(before + own_amount() / of, *limit);
        if (!fits || (!due.empty() && before >= least)) continue;
        due = members_[i].name;
        least = before;
    }
    return due;
}

std::optional<Instant> QuantityCheck::until(int member) const {
    const bool rolls =
        quantity_.window.kind == WindowKind::rolling || quantity_.window.kind == WindowKind::mean;
    if (!rolls) {
        const bool ends = window_->end && *window_->end > at_;
        return ends ? window_->end : std::nullopt;
    }
    const auto fits = [&](Instant t) {
        const auto limit = limit_of(t);
        return !limit || !exceeds(used(member, t, true), *limit);
    };
    // Nothing new comes in after the plan, so that what is used only falls: the first instant can be halved
    // for.
    Instant no = at_;
    Instant yes = at_ + 1;
    for (std::int64_t step = ms_per_day; !fits(yes); step *= 2) {
        no = yes;
        yes = at_ + step;
        if (step > 40 * 366 * ms_per_day) return std::nullopt;
    }
    while (yes - no > 1) {
        const Instant middle = no + (yes - no) / 2;
        (fits(middle) ? yes : no) = middle;
    }
    return yes;
}

}  // namespace spoilbook
