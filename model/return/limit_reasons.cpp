// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/return/limit_reasons.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "model/return/condition_named.h"

namespace spoilbook {

namespace {

bool same_number(const Condition& a, const Condition& b) {
    return a.consent == b.consent && a.condition == b.condition && a.kind == b.kind;
}

std::string name_of(const LimitState& state, const Season& season) {
    std::string name = condition_named(*state.condition, season);
    if (state.member && !state.member->name.empty())
        name += ", " + each_of_text(state.quantity.each_of) + " " + state.member->name;
    return name;
}

/// It ended in the period, and no version of its number stands in for it.
bool ended_in(const Condition& condition, const Season& season, const Period& period, Instant limits_at) {
    if (condition.kind != "quantity" || !condition.to) return false;
    if (*condition.to <= period.from || limits_at < *condition.to) return false;
    if (condition.from && *condition.to <= *condition.from) return false;
    const auto& all = season.conditions.rows();
    return std::none_of(all.begin(), all.end(), [&](const Condition& other) {
        const bool later = other.to && *condition.to < *other.to && *other.to <= limits_at;
        return same_number(other, condition) && (in_force(other, limits_at) || later);
    });
}

/// Judges the rows of one condition's number over the whole period.
class PeriodJudge {
 public:
    PeriodJudge(const Ledger& ledger, const JudgedLimits& judged, const ReturnFacts& facts,
                const Condition& condition)
        : ledger_(ledger), judged_(judged), facts_(facts), condition_(condition) {}

    void add_to(std::vector<std::string>& reasons) {
        auto overs = judged_.first_overs(condition_, facts_.limits_at, facts_.period.from);
        const Season& season = ledger_.season();
        bool told_unknown = false;
        for (const auto& state : facts_.limits) {
            if (!state.quantity.at_most || !same_number(*state.condition, condition_)) continue;
            const bool exceeded = overs.erase(state.member ? state.member->id : Id{}) > 0;
            if (state.limit && exceeds(state.used, *state.limit))
                reasons.push_back(name_of(state, season) + ": used is over the limit");
            else if (exceeded)
                reasons.push_back(name_of(state, season) + ": the limit was exceeded in this period");
            if (state.hangs_on_records())
                reasons.push_back(
                    fmt::format("{}: of {} load(s) it is not recorded whether they count; if they do, the "
                                "limit is exceeded, so it cannot be told",
                                name_of(state, season), state.not_recorded));
            if (state.unknown == 0) continue;
            told_unknown = true;
            reasons.push_back(fmt::format("{}: {} load(s) cannot be valued, so it cannot be told",
                                          name_of(state, season), state.unknown));
        }
        const std::string name = condition_named(condition_, season);
        if (!overs.empty()) reasons.push_back(name + ": the limit was exceeded in this period");
        const auto unknown = told_unknown ? 0 : unknown_loads();
        if (unknown > 0)
            reasons.push_back(fmt::format(
                "{}: {} load(s) of this period cannot be valued, so it cannot be told", name, unknown));
    }

 private:
    /// Of the whole period, also those that the windows at its end no longer hold.
    [[nodiscard]] std::size_t unknown_loads() const {
        const Season& season = ledger_.season();
        std::set<std::uint32_t> loads;
        for (const auto& version : season.conditions.rows()) {
            if (!same_number(version, condition_)) continue;
            const auto quantity = quantity_from(version, season.zone);
            if (!quantity || !quantity->at_most) continue;
            for (const auto& count : counts_of(*quantity, members_of(*quantity, season), version, ledger_)) {
                const bool then = facts_.period.contains(count.at) && count.at <= facts_.limits_at &&
                                  in_force(version, count.at);
                if (count.unknown && then) loads.insert(count.load);
            }
        }
        return loads.size();
    }

    const Ledger& ledger_;
    const JudgedLimits& judged_;
    const ReturnFacts& facts_;
    const Condition& condition_;
};

}  // namespace

std::vector<LimitState> limits_in(const JudgedLimits& judged, const Season& season, const Period& period,
                                  Instant limits_at, Refusals& unread) {
    auto states = judged.limits_at(limits_at, &unread);
    for (const auto& condition : season.conditions.rows()) {
        if (!ended_in(condition, season, period, limits_at)) continue;
        auto ended = judged.limits_of(condition, *condition.to - 1, &unread);
        std::move(ended.begin(), ended.end(), std::back_inserter(states));
    }
    return states;
}

bool exceeded_in(const JudgedLimits& judged, const LimitState& state, const Period& period,
                 Instant limits_at) {
    if (state.limit && state.quantity.at_most && exceeds(state.used, *state.limit)) return true;
    const auto overs = judged.first_overs(*state.condition, limits_at, period.from);
    return overs.contains(state.member ? state.member->id : Id{});
}

std::vector<std::string> limit_reasons(const Ledger& ledger, const JudgedLimits& judged,
                                       const ReturnFacts& facts) {
    std::vector<std::string> reasons;
    std::vector<const Condition*> numbers;
    for (const auto& state : facts.limits) {
        const bool known = std::any_of(numbers.begin(), numbers.end(), [&](const Condition* condition) {
            return same_number(*condition, *state.condition);
        });
        if (!known) numbers.push_back(state.condition);
    }
    for (const auto* condition : numbers)
        PeriodJudge(ledger, judged, facts, *condition).add_to(reasons);
    return reasons;
}

}  // namespace spoilbook
