// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/limit.h"

#include <algorithm>

#include "model/consent/first_over.h"
#include "model/unit/calendar.h"

namespace spoilbook {

bool in_force(const Condition& condition, Instant at) {
    return (!condition.from || *condition.from <= at) && (!condition.to || at < *condition.to);
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
        counts_ = counts_of(quantity_, members_, condition, ledger);
        window_ = window_at(quantity_.window, consent_, season_, as_at);
        first_overs_ = first_overs(ledger, condition, as_at);
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
        state.consent = season_.consents.find(condition_.consent);
        state.quantity = quantity_;
        if (quantity_.each_of != EachOf::none) {
            state.member = member < 0 ? Member{} : members_[static_cast<std::size_t>(member)];
        }
        fill_window(state);
        fill_used(state, member);
        fill_limit(state);
        const auto over = first_overs_.find(state.member ? state.member->name : "");
        if (over != first_overs_.end()) state.first_over = over->second;
        return state;
    }

    void fill_window(LimitState& state) const {
        if (!window_) return;
        state.window_start = window_->start;
        state.window_end = window_->end;
    }

    void fill_used(LimitState& state, int member) const {
        if (!window_) return;
        const auto used = quantity_.window.kind == WindowKind::trip
                              ? used_by_last_trip(member)
                              : used_in(counts_, member, adding_of(quantity_), *window_, as_at_);
        state.used = used.used.value;
        state.used_u = used.used.u();
        state.unknown = used.unknown_loads.size();
        if (quantity_.window.kind == WindowKind::mean) fill_mean(state);
        if (quantity_.share_of_total) fill_share(state, member);
    }

    void fill_mean(LimitState& state) const {
        const double sum = state.used;
        const int years = std::max(1, quantity_.window.n);
        state.used = sum / years;
        state.used_u /= years;
        if (!consent_.commences || as_at_ < *consent_.commences) return;
        int begun = 1;  // consent years begun since it commenced
        while (begun < years && shift_months(season_.zone, *consent_.commences, 12 * begun) <= as_at_)
            ++begun;
        if (begun < years) state.used_over_years = sum / begun;
    }

    void fill_share(LimitState& state, int member) const {
        if (quantity_.of_value) {
            // A stated volume is exact: the share is as sure as the used amount.
            state.of_total = *quantity_.of_value;
            const double scale = state.of_total > 0 ? 1 / state.of_total : 0;
            state.used *= scale;
            state.used_u *= scale;
            return;
        }
        state.of_total = total_in_window();
        const auto share = share_in(counts_, member, adding_of(quantity_), *window_, as_at_, state.of_total);
        state.used = share.value;
        state.used_u = share.u();
        if (quantity_.window.kind == WindowKind::mean) state.of_total /= std::max(1, quantity_.window.n);
    }

    [[nodiscard]] double total_in_window() const {
        double total = 0;
        for (int member = -1; member < static_cast<int>(members_.size()); ++member) {
            total += used_in(counts_, member, adding_of(quantity_), *window_, as_at_).used.value;
        }
        return total;
    }

    void fill_limit(LimitState& state) const {
        state.limit = limit_at(quantity_, as_at_);
        const bool below_floor =
            quantity_.share_of_total && quantity_.of_floor && state.of_total < *quantity_.of_floor;
        if (below_floor) state.limit.reset();
        if (state.limit && state.unknown == 0) {
            const bool over = exceeds(state.used, *state.limit);
            state.p_over = state.used_u > 0 ? probability_over(state.used, state.used_u, *state.limit)
                                            : (over ? 1.0 : 0.0);
        }
    }

    [[nodiscard]] Used used_by_last_trip(int member) const {
        const Count* last = nullptr;
        for (const auto& count : counts_) {
            if (count.at <= as_at_ && count.member == member) last = &count;
        }
        if (last == nullptr) return {};
        std::vector<Count> own;
        for (const auto& count : counts_) {
            if (count.key == last->key && count.member == member) own.push_back(count);
        }
        return used_in(own, member, adding_of(quantity_), *window_, as_at_);
    }

    const Season& season_;
    const Condition& condition_;
    Consent consent_;
    Quantity quantity_;
    Instant as_at_;
    std::vector<Member> members_;
    std::vector<Count> counts_;
    std::optional<Window> window_;
    std::unordered_map<std::string, Instant> first_overs_;
};

}  // namespace

std::vector<LimitState> limits_at(const Ledger& ledger, Instant as_at, Refusals* refusals) {
    std::vector<LimitState> states;
    for (const auto& condition : ledger.season().conditions.rows()) {
        if (condition.kind != "quantity" || !in_force(condition, as_at)) continue;
        auto quantity = quantity_from(condition, ledger.season().zone);
        if (!quantity) {
            for (const auto& refusal : quantity.refusals()) {
                if (refusals != nullptr) refusals->push_back(refusal);
            }
            continue;
        }
        auto rows = LimitRows(ledger, condition, *quantity, as_at).rows();
        std::move(rows.begin(), rows.end(), std::back_inserter(states));
    }
    return states;
}

}  // namespace spoilbook
