// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/first_over.h"

#include <algorithm>
#include <set>

#include "model/consent/limit.h"
#include "model/consent/used_of.h"

namespace spoilbook {

namespace {

using FirstOvers = std::unordered_map<Id, Instant>;
using Hand = std::function<void(const LimitMoment&)>;

/// Walks one version's counts in order of time and judges each instant in which the version was in force.
class LimitWalk {
 public:
    LimitWalk(const Ledger& ledger, const Condition& version, const Quantity& quantity, const Hand& hand)
        : season_(ledger.season()),
          version_(version),
          quantity_(quantity),
          hand_(hand),
          members_(members_of(quantity, season_)),
          counts_(counts_of(quantity, members_, version, ledger, {std::nullopt, std::nullopt, false})),
          sweep_(counts_, static_cast<int>(members_.size()), adding_of(quantity)),
          windows_(quantity_.window, consent_, season_) {
        const Consent* consent = season_.consents.find(version.consent);
        if (consent != nullptr) consent_ = *consent;
    }

    WalkWork run(std::optional<Instant> from, Instant as_at) {
        std::size_t next = 0;
        while (next < counts_.size() && counts_[next].at <= as_at) {
            const Instant t = counts_[next].at;
            touched_.clear();
            for (; next < counts_.size() && counts_[next].at == t; ++next) {
                touched_.push_back(counts_[next].member);
                if (quantity_.window.kind == WindowKind::trip) add_to_trip(counts_[next]);
            }
            if (!in_force(version_, t) || (from && t < *from)) {
                touched_trips_.clear();
                judge_all_ = true;
                continue;
            }
            if (quantity_.window.kind == WindowKind::trip)
                judge_trips(t);
            else
                judge(t);
        }
        return {next, sweep_.moves()};
    }

 private:
    void judge(Instant t) {
        if (!window_ || !holds(*window_, t)) window_ = windows_.at(t);
        if (!window_ || !window_->counts(t, t)) {
            judge_all_ = true;
            return;
        }
        if (sweep_.move_to(t, *window_)) judge_all_ = true;
        const bool all = all_are_due(t) || quantity_.share_of_total;
        if (!all) {
            std::sort(touched_.begin(), touched_.end());
            touched_.erase(std::unique(touched_.begin(), touched_.end()), touched_.end());
            for (const int member : touched_)
                judge_sum(member, t);
            return;
        }
        for (int member = -1; member < static_cast<int>(members_.size()); ++member)
            judge_sum(member, t);
    }

    void judge_sum(int member, Instant t) {
        const double total = quantity_.share_of_total ? sweep_.total() : 0;
        const auto part = used_of(quantity_, sweep_.of(member), total);
        if (part.judged) judge_member(member, t, part.used);
    }

    /// Whether members that nothing was added to may be over now: a version begins, or a limit falls, with
    /// what they have used already.
    bool all_are_due(Instant t) {
        const auto limit = limit_at(quantity_, t);
        const bool due = judge_all_ || limit != judged_by_;
        judged_by_ = limit;
        judge_all_ = false;
        return due;
    }

    void judge_member(int member, Instant t, double used) {
        const auto limit = limit_at(quantity_, t);
        if (limit) hand_({member, t, used, *limit});
    }

    void add_to_trip(const Count& count) {
        auto& sum = trip_sums_[{count.key, count.member}];
        sum = adding_of(quantity_) == Adding::distinct ? 1 : sum + count.amount.value;
        touched_trips_.insert({count.key, count.member});
    }

    void judge_trips(Instant t) {
        for (const auto& trip : touched_trips_)
            judge_member(trip.second, t, trip_sums_.at(trip));
        touched_trips_.clear();
    }

    /// Whether a window made for an earlier instant is still the one of t: not for those that end at t
    /// itself.
    static bool holds(const Window& window, Instant t) {
        return window.start_counts && window.end && window.begins_by(t) && t < *window.end;
    }

    const Season& season_;
    const Condition& version_;
    const Quantity& quantity_;
    const Hand& hand_;
    Consent consent_;
    std::vector<Member> members_;
    std::vector<Count> counts_;
    Sweep sweep_;
    WindowFinder windows_;
    std::optional<Window> window_;
    std::vector<int> touched_;  ///< members that something was added to at the instant
    bool judge_all_ = true;
    std::optional<double> judged_by_;
    std::map<std::pair<std::uint32_t, int>, double> trip_sums_;
    std::set<std::pair<std::uint32_t, int>> touched_trips_;
};

}  // namespace

bool LimitMoment::over() const {
    return exceeds(used, limit);
}

WalkWork each_moment(const Ledger& ledger, const Condition& version, const Quantity& quantity,
                     std::optional<Instant> from, Instant as_at, const Hand& hand) {
    return LimitWalk(ledger, version, quantity, hand).run(from, as_at);
}

FirstOvers first_overs(const Ledger& ledger, const Condition& any_version, Instant as_at,
                       std::optional<Instant> from) {
    FirstOvers found;
    for (const auto& version : ledger.season().conditions.rows()) {
        const bool same =
            version.consent == any_version.consent && version.condition == any_version.condition;
        if (!same || version.kind != "quantity") continue;
        const auto quantity = quantity_from(version, ledger.season().zone);
        if (!quantity || !quantity->at_most) continue;
        const auto members = members_of(*quantity, ledger.season());
        each_moment(ledger, version, *quantity, from, as_at, [&](const LimitMoment& moment) {
            if (!moment.over()) return;
            const Id id = moment.member < 0 ? Id{} : members[static_cast<std::size_t>(moment.member)].id;
            const auto [place, fresh] = found.try_emplace(id, moment.at);
            if (!fresh && moment.at < place->second) place->second = moment.at;
        });
    }
    return found;
}

}  // namespace spoilbook
