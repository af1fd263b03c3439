// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/duty_calendar.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <set>

#include "model/consent/count_list.h"
#include "model/consent/duty_matches.h"
#include "model/consent/duty_periods.h"
#include "model/consent/limit.h"
#include "model/consent/scope_filter.h"
#include "model/record/working_days.h"
#include "model/unit/calendar.h"

namespace spoilbook {

namespace {

/// Finds the times of one duty.
class DutyTimes {
 public:
    DutyTimes(const Ledger& ledger, const Condition& condition, Duty duty, Instant as_at)
        : ledger_(ledger),
          season_(ledger.season()),
          condition_(condition),
          consent_(season_.consents.find(condition.consent)),
          duty_(std::move(duty)),
          as_at_(as_at),
          not_working_(not_working_from(consent_ == nullptr ? "" : consent_->not_working)) {}

    std::vector<DutyTime> run() {
        switch (duty_.when) {
            case DutyWhen::event:
                add_events();
                break;
            case DutyWhen::amount:
                add_steps();
                break;
            case DutyWhen::date:
                add_date();
                break;
            default:
                add_periods();
        }
        return std::move(times_);
    }

 private:
    DutyTime made(std::optional<Instant> arises, std::optional<Period> covers, std::optional<Instant> due) {
        DutyTime time;
        time.condition = &condition_;
        time.consent = consent_;
        time.duty = duty_;
        time.arises = arises;
        time.covers = covers;
        time.due = due;
        if (arises && *arises <= as_at_)
            time.state = due && as_at_ > *due ? DutyState::overdue : DutyState::due;
        return time;
    }

    /// Of a period that ended at midnight, the first working day after it is the new day itself.
    [[nodiscard]] std::optional<Instant> due_from(Instant at, bool is_end_of_period) const {
        if (!duty_.due_n) return std::nullopt;
        const bool step_back = is_end_of_period && duty_.due_unit == "working_days";
        return due_after(season_.zone, step_back ? at - 1 : at, *duty_.due_n, duty_.due_unit, not_working_);
    }

    [[nodiscard]] std::optional<Instant> begins() const {
        if (consent_ != nullptr && consent_->commences) return consent_->commences;
        if (const auto first = first_version_from()) return first;
        if (ledger_.released().empty()) return std::nullopt;
        return ledger_.released().front().at;
    }

    /// A later version's `from` cuts no period: it takes over from the one before. Nothing where the first
    /// version has none.
    [[nodiscard]] std::optional<Instant> first_version_from() const {
        std::optional<Instant> first = condition_.from;
        for (const auto& version : season_.conditions.rows()) {
            if (version.consent != condition_.consent || version.condition != condition_.condition) continue;
            if (!version.from) return std::nullopt;
            first = std::min(first, version.from);
        }
        return first;
    }

    void add_periods() {
        const auto from = begins();
        if (!from) return;
        // A period that ends with the year ahead is whole: only what goes on past it is cut.
        Period span{*from, shift_months(season_.zone, as_at_, 12) + 1};
        if (consent_ != nullptr && consent_->expires) span.to = std::min(span.to, *consent_->expires);
        const std::string year_starts = consent_ == nullptr ? "" : consent_->year_starts;
        for (const auto& period : duty_periods(season_.zone, duty_.when, year_starts, span)) {
            const bool is_cut_by_look_ahead =
                period.to == span.to && !(consent_ != nullptr && consent_->expires == span.to);
            if (is_cut_by_look_ahead || !in_force(condition_, period.to - 1)) continue;
            auto time = made(period.to, period, due_from(period.to, true));
            const bool has_ended = period.to <= as_at_;
            if (has_ended && !duty_.nil_required && !has_activity(period)) time.state = DutyState::nil;
            times_.push_back(std::move(time));
        }
    }

    [[nodiscard]] bool has_activity(const Period& period) const {
        const ScopeFilter filter(duty_.scope, season_);
        const auto any = [&](const std::vector<LedgerLine>& lines) {
            const auto own = lines_between(lines, period.from, std::min(period.to - 1, as_at_));
            return std::any_of(own.begin(), own.end(),
                               [&](const LedgerLine& line) { return filter.takes_any_of(line); });
        };
        return any(ledger_.released()) || any(ledger_.dredged());
    }

    void add_events() {
        for (const auto& event : season_.events.rows()) {
            if (!event.from || *event.from > as_at_ || !in_force(condition_, *event.from)) continue;
            const bool fits =
                duty_.event == "any" || event.kind == duty_.event || event.condition == duty_.event;
            if (!fits) continue;
            const bool from_end = duty_.due_after == "end";
            const auto counted_from = from_end ? event.to : event.from;
            auto time = made(event.from, Period{*event.from, event.to.value_or(*event.from)},
                             counted_from ? due_from(*counted_from, false) : std::nullopt);
            time.event = &event;
            times_.push_back(std::move(time));
        }
    }

    void add_date() {
        if (!in_force(condition_, *duty_.on)) return;
        const auto day_end = season_.zone.day_start(plus_days(season_.zone.day_of(*duty_.on), 1));
        auto due = due_from(*duty_.on, false);
        if (!duty_.due_n) due = duty_.on_whole_day ? day_end : *duty_.on;
        times_.push_back(made(duty_.on, std::nullopt, due));
    }

    [[nodiscard]] double step_of(double total) const {
        // A sum of tenths may fall a hair short of the round figure that it stands for.
        return std::floor(total / duty_.every + 1e-9);
    }

    /// A multiple that an opening amount reached was reached before the book began: nobody knows when.
    void add_steps() {
        double total = 0;
        std::size_t unknown = 0;
        std::set<std::uint32_t> seen;
        const bool is_distinct = adding_of(duty_.counted) == Adding::distinct;
        std::optional<Instant> step_before = begins();
        for (const auto& count :
             counts_of(duty_.counted, {}, condition_, ledger_, {std::nullopt, std::nullopt, false})) {
            if (count.at > as_at_) break;
            if (consent_ != nullptr && consent_->commences && count.at < *consent_->commences) continue;
            if (count.unknown) ++unknown;
            const double before = step_of(total);
            if (!is_distinct || count.opening)
                total += count.amount.value;
            else if (seen.insert(count.key).second)
                total += 1;
            if (count.opening) continue;
            const auto steps = static_cast<std::int64_t>(step_of(total) - before);
            for (std::int64_t n = 1; n <= steps; ++n) {
                const double step = before + static_cast<double>(n);
                if (in_force(condition_, count.at)) {
                    const Period covers{step_before.value_or(count.at), count.at};
                    times_.push_back(made(count.at, covers, due_from(count.at, false)));
                    times_.back().step = step * duty_.every;
                    times_.back().unknown = unknown;
                }
                step_before = count.at;
            }
        }
        if (!in_force(condition_, as_at_)) return;
        auto next = made(std::nullopt, std::nullopt, std::nullopt);
        next.step = (step_of(total) + 1) * duty_.every;
        next.to_go = *next.step - total;
        next.unknown = unknown;
        times_.push_back(std::move(next));
    }

    const Ledger& ledger_;
    const Season& season_;
    const Condition& condition_;
    const Consent* consent_;
    Duty duty_;
    Instant as_at_;
    NotWorking not_working_;
    std::vector<DutyTime> times_;
};

/// What is not reached yet stands last.
bool arises_before(const DutyTime& a, const DutyTime& b) {
    if (!a.arises || !b.arises) return a.arises.has_value() && !b.arises;
    return *a.arises < *b.arises;
}

DutiesOfConsent& duties_of(const Id& consent, std::vector<DutiesOfConsent>& all) {
    const auto found = std::find_if(all.begin(), all.end(),
                                    [&](const DutiesOfConsent& one) { return one.consent == consent; });
    return found != all.end() ? *found : all.emplace_back(DutiesOfConsent{consent, {}});
}

}  // namespace

std::string text(DutyState state) {
    switch (state) {
        case DutyState::coming:
            return "coming";
        case DutyState::due:
            return "due";
        case DutyState::overdue:
            return "overdue";
        case DutyState::done:
            return "done";
        case DutyState::nil:
            break;
    }
    return "nil";
}

std::vector<DutyTime> duty_times(const Ledger& ledger, const Condition& condition, Instant as_at,
                                 Refusals* refusals) {
    const auto& season = ledger.season();
    const auto& number = condition.condition;
    const bool alone = !any_record_names_no_consent(season, number, as_at);
    // All versions of a condition share the records of what was done, and so do the duties of one number
    // where a record names no consent: one record is for one time.
    std::vector<DutiesOfConsent> all;
    for (const auto& version : season.conditions.rows()) {
        const bool is_own = version.consent == condition.consent;
        if (version.condition != number || version.kind != "duty" || (alone && !is_own)) continue;
        auto duty = duty_from(version, season.zone);
        if (!duty) {
            if (refusals != nullptr && version.id == condition.id)
                refusals->insert(refusals->end(), duty.refusals().begin(), duty.refusals().end());
            continue;
        }
        auto of_version = DutyTimes(ledger, version, *duty, as_at).run();
        auto& times = duties_of(version.consent, all).times;
        std::move(of_version.begin(), of_version.end(), std::back_inserter(times));
    }
    for (auto& one : all)
        std::stable_sort(one.times.begin(), one.times.end(), arises_before);
    match_done(season, number, as_at, all);
    auto times = std::move(duties_of(condition.consent, all).times);
    std::erase_if(times, [&](const DutyTime& time) { return time.condition->id != condition.id; });
    return times;
}

std::vector<DutyTime> duty_calendar(const Ledger& ledger, Instant as_at, Refusals* refusals) {
    std::vector<DutyTime> all;
    for (const auto& condition : ledger.season().conditions.rows()) {
        if (condition.kind != "duty") continue;
        auto times = duty_times(ledger, condition, as_at, refusals);
        all.insert(all.end(), std::make_move_iterator(times.begin()), std::make_move_iterator(times.end()));
    }
    return all;
}

}  // namespace spoilbook
