// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/limit.h"

#include <algorithm>
#include <set>

#include "model/consent/first_over.h"
#include "model/consent/used_of.h"
#include "model/unit/calendar.h"

namespace spoilbook {

bool in_force(const Condition& condition, Instant at) {
    return (!condition.from || *condition.from <= at) && (!condition.to || at < *condition.to);
}

bool LimitState::hangs_on_records() const {
    if (!limit || !used_at_most) return false;
    if (quantity.at_most) return !exceeds(used, *limit) && exceeds(*used_at_most, *limit);
    return exceeds(*limit, used) && !exceeds(*limit, *used_at_most);
}

Adding adding_of(const Quantity& quantity) {
    const bool distinct = quantity.measure == LimitMeasure::trips || quantity.measure == LimitMeasure::days;
    return distinct ? Adding::distinct : Adding::amounts;
}

namespace {

/// Works out the rows of one condition at one instant.
class LimitRows {
 public:
    LimitRows(const Ledger& ledger, const Condition& condition, Quantity quantity, Instant as_at)
        : season_(ledger.season()), condition_(condition), quantity_(std::move(quantity)), as_at_(as_at) {
        const Consent* consent = season_.consents.find(condition.consent);
        if (consent != nullptr) consent_ = *consent;
        members_ = members_of(quantity_, season_);
        window_ = window_at(quantity_.window, consent_, season_, as_at);
        const bool by_window = window_ && quantity_.window.kind != WindowKind::trip;
        CountsWanted wanted;
        if (by_window) wanted = {window_->start, as_at};
        wanted.with_doubtful = true;
        for (auto& count : counts_of(quantity_, members_, condition, ledger, wanted))
            (count.doubtful ? doubtful_ : counts_).push_back(std::move(count));
        all_is_recorded_ =
            doubtful_.empty() && std::none_of(counts_.begin(), counts_.end(),
                                              [](const Count& count) { return count.member_unsaid; });
        first_overs_ = first_overs(ledger, condition, as_at);
    }

    /// Of one trip instead of the newest.
    LimitState row_of_trip(std::uint32_t trip) {
        trip_ = trip;
        return row(-1);
    }

    std::vector<LimitState> rows() {
        std::vector<LimitState> rows;
        if (quantity_.each_of == EachOf::none) return {row(-1)};
        for (std::size_t i = 0; i < members_.size(); ++i)
            rows.push_back(row(static_cast<int>(i)));
        const bool rest = window_ && std::any_of(counts_.begin(), counts_.end(), [&](const Count& count) {
                              return count.member < 0 && window_->counts(count.at, as_at_);
                          });
        if (rest) rows.push_back(row(-1));
        return rows;
    }

 private:
    LimitState row(int member) {
        LimitState state;
        state.condition = &condition_;
        state.as_at = as_at_;
        state.consent = season_.consents.find(condition_.consent);
        state.quantity = quantity_;
        if (quantity_.each_of != EachOf::none) {
            state.member = member < 0 ? Member{} : members_[static_cast<std::size_t>(member)];
        }
        fill_window(state);
        const bool judged = fill_used(state, member);
        fill_limit(state, judged);
        const auto over = first_overs_.find(state.member ? state.member->id : Id{});
        if (over != first_overs_.end()) state.first_over = over->second;
        return state;
    }

    void fill_window(LimitState& state) const {
        if (!window_) return;
        state.window_start = window_->start;
        state.window_end = window_->end;
    }

    /// False while a share's total is below its floor.
    [[nodiscard]] bool fill_used(LimitState& state, int member) const {
        if (!window_) return used_of(quantity_, 0, 0).judged;
        const auto used = quantity_.window.kind == WindowKind::trip
                              ? used_by_trip(member)
                              : used_in(counts_, member, adding_of(quantity_), *window_, as_at_);
        const bool of_the_total = quantity_.share_of_total && !quantity_.of_value;
        const double total = of_the_total ? total_in_window() : 0;
        const auto part = used_of(quantity_, used.used.value, total);
        state.unknown = used.unknown_loads.size();
        fill_not_recorded(member, used.used.value, state);
        state.used = part.used;
        state.of_total = part.of_total;
        if (of_the_total) {
            state.used_u = share_in(counts_, member, adding_of(quantity_), *window_, as_at_, total).u();
        } else {
            // Years and a stated volume are exact.
            state.used_u = used_of(quantity_, used.used.u(), 0).used;
        }
        const auto begun = years_begun();
        if (begun) state.used_over_years = used_of(quantity_, used.used.value, total, *begun).used;
        return part.judged;
    }

    /// Of a window that holds trips of their own nothing is told: what another trip may be is not of this
    /// one.
    void fill_not_recorded(int member, double sum, LimitState& state) const {
        const bool is_rest = member < 0 && quantity_.each_of != EachOf::none;
        if (all_is_recorded_ || is_rest || quantity_.window.kind == WindowKind::trip) return;
        std::set<std::uint32_t> loads;
        auto all = counts_;
        all.insert(all.end(), doubtful_.begin(), doubtful_.end());
        std::erase_if(all, [&](const Count& count) { return !window_->counts(count.at, as_at_); });
        for (auto& count : all) {
            const bool is_unsaid =
                member >= 0 &&
                may_be_of(count, quantity_, members_[static_cast<std::size_t>(member)], season_);
            if (count.member != member && !is_unsaid) continue;
            if (is_unsaid && is_in_already(count, member, quantity_, counts_)) continue;
            if (count.doubtful || is_unsaid) loads.insert(count.load);
            count.member = member;
        }
        if (loads.empty()) return;
        std::stable_sort(all.begin(), all.end(), [](const Count& a, const Count& b) { return a.at < b.at; });
        const auto adding = adding_of(quantity_);
        const bool of_the_total = quantity_.share_of_total && !quantity_.of_value;
        const double total =
            of_the_total ? used_in(all, std::nullopt, adding, *window_, as_at_).used.value : 0;
        const auto most = used_in(all, member, adding, *window_, as_at_).used.value;
        state.not_recorded = loads.size();
        state.used_at_most = used_of(quantity_, std::max(sum, most), total).used;
    }

    /// Consent years begun since it commenced, while they are fewer than those of a mean.
    [[nodiscard]] std::optional<double> years_begun() const {
        if (!consent_.commences || as_at_ < *consent_.commences) return std::nullopt;
        int begun = 1;
        while (begun < years_of(quantity_) &&
               shift_months(season_.zone, *consent_.commences, 12 * begun) <= as_at_)
            ++begun;
        return begun < years_of(quantity_) ? std::optional<double>(begun) : std::nullopt;
    }

    [[nodiscard]] double total_in_window() const {
        return used_in(counts_, std::nullopt, adding_of(quantity_), *window_, as_at_).used.value;
    }

    void fill_limit(LimitState& state, bool judged) const {
        if (judged) state.limit = limit_at(quantity_, as_at_);
        if (state.limit && state.unknown == 0) {
            const bool over = exceeds(state.used, *state.limit);
            state.p_over = state.used_u > 0 ? probability_over(state.used, state.used_u, *state.limit)
                                            : (over ? 1.0 : 0.0);
        }
    }

    /// By the trip asked for, else by the newest.
    [[nodiscard]] Used used_by_trip(int member) const {
        auto trip = trip_;
        for (const auto& count : counts_) {
            if (!trip_ && count.at <= as_at_ && count.member == member) trip = count.key;
        }
        if (!trip) return {};
        std::vector<Count> own;
        for (const auto& count : counts_) {
            if (count.key == *trip && count.member == member) own.push_back(count);
        }
        return used_in(own, member, adding_of(quantity_), *window_, as_at_);
    }

    const Season& season_;
    const Condition& condition_;
    Consent consent_;
    Quantity quantity_;
    Instant as_at_;
    std::vector<Member> members_;
    std::vector<Count> counts_, doubtful_;
    bool all_is_recorded_ = true;
    std::optional<Window> window_;
    std::optional<std::uint32_t> trip_;
    std::unordered_map<Id, Instant> first_overs_;
};

}  // namespace

std::vector<LimitState> limits_of_as_restated(const Ledger& ledger, const Condition& condition, Instant as_at,
                                              Refusals* refusals) {
    const auto quantity = quantity_from(condition, ledger.season().zone);
    if (quantity) return LimitRows(ledger, condition, *quantity, as_at).rows();
    if (refusals != nullptr)
        refusals->insert(refusals->end(), quantity.refusals().begin(), quantity.refusals().end());
    return {};
}

LimitState limit_of_trip_as_restated(const Ledger& ledger, const Condition& condition,
                                     const Quantity& quantity, Instant as_at, std::uint32_t trip) {
    return LimitRows(ledger, condition, quantity, as_at).row_of_trip(trip);
}

std::vector<LimitState> limits_as_restated(const Ledger& ledger, Instant as_at, Refusals* refusals) {
    std::vector<LimitState> states;
    for (const auto& condition : ledger.season().conditions.rows()) {
        if (condition.kind != "quantity" || !in_force(condition, as_at)) continue;
        auto rows = limits_of_as_restated(ledger, condition, as_at, refusals);
        std::move(rows.begin(), rows.end(), std::back_inserter(states));
    }
    return states;
}

}  // namespace spoilbook
