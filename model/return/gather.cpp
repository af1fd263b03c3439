// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "model/return/condition_named.h"
#include "model/return/duties_in.h"
#include "model/return/factors_used.h"
#include "model/return/judge_releases.h"
#include "model/return/largest_used.h"
#include "model/return/limit_reasons.h"
#include "model/return/not_judged.h"
#include "model/return/schedule.h"
#include "model/unit/calendar.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

void add_to(PrintedTotal& total, const ScheduleLine& line, std::optional<Tenths> in_situ) {
    ++total.releases;
    if (line.hopper_m3) total.hopper_m3.tenths += line.hopper_m3->tenths;
    if (in_situ)
        total.in_situ_m3.tenths += in_situ->tenths;
    else
        ++total.unknown;
}

std::vector<PrintedTotal> sorted(const std::map<std::string, PrintedTotal>& totals) {
    std::vector<PrintedTotal> list;
    for (const auto& [key, total] : totals) {
        list.push_back(total);
        list.back().key = key;
    }
    // What has no key stands last.
    std::stable_partition(list.begin(), list.end(),
                          [](const PrintedTotal& total) { return !total.key.empty(); });
    return list;
}

std::vector<PrintedTotal> totals_by(const std::vector<ScheduleLine>& schedule,
                                    std::string ScheduleLine::*key) {
    std::map<std::string, PrintedTotal> totals;
    for (const auto& line : schedule)
        add_to(totals[line.*key], line, line.in_situ_m3);
    return sorted(totals);
}

/// Hopper volume is not printed by claim: a claim's part of a hopper is no reading of anybody's.
std::vector<PrintedTotal> totals_by_claim(const std::vector<ScheduleLine>& schedule) {
    std::map<std::string, PrintedTotal> totals;
    for (const auto& line : schedule) {
        if (line.in_situ_by_claim.empty()) add_to(totals[""], line, std::nullopt);
        for (const auto& [claim, part] : line.in_situ_by_claim) {
            auto& total = totals[claim];
            ++total.releases;
            total.in_situ_m3.tenths += part.tenths;
        }
    }
    return sorted(totals);
}

std::vector<const Event*> events_in(const Season& season, const Period& period, Instant as_at) {
    std::vector<const Event*> events;
    for (const auto& event : season.events.rows()) {
        if (event.from && period.contains(*event.from) && *event.from <= as_at) events.push_back(&event);
    }
    return events;
}

/// What was passed at a site in the period, and what stands against the answer.
void fill_turbidity(const Book& book, const ReturnAsk& ask, ReturnFacts& facts) {
    facts.turbidity = std::make_shared<TurbidityWatch>(book, *facts.season, ask.as_at);
    facts.triggers = event_answers(*facts.turbidity, *facts.season, ask.as_at);
    std::erase_if(facts.triggers, [&](const EventAnswer& answer) {
        return !facts.period.contains(answer.record.event.start);
    });
    facts.water = site_months(*facts.turbidity, facts.period, ask.as_at);
}

std::string named(const EventAnswer& answer) {
    return fmt::format("condition {} at {}", answer.record.of->number, answer.record.event.site);
}

void add_answer_reasons(const ReturnFacts& facts, std::vector<std::string>& reasons) {
    const Zone& zone = facts.season->zone;
    for (const auto& answer : facts.triggers) {
        const std::string passed = instant_text(answer.record.event.start, zone);
        if (answer.state == AnswerState::late)
            reasons.push_back(fmt::format("{}: the answer to what passed {} was told {}, due {}",
                                          named(answer), passed, instant_text(*answer.told_at, zone),
                                          instant_text(*answer.record.due, zone)));
        if (answer.state == AnswerState::undated)
            reasons.push_back(
                fmt::format("{}: it cannot be told whether the answer to what passed {} was in time",
                            named(answer), passed));
    }
}

/// What was not done in its time was asked for and not given. What became due after the period stands against
/// the later one.
void add_duty_reasons(const ReturnFacts& facts, std::vector<std::string>& reasons) {
    const Zone& zone = facts.season->zone;
    for (const auto& time : facts.duties) {
        if (time.state != DutyState::overdue && !time.late()) continue;
        if (facts.period.to < *time.due) continue;
        reasons.push_back(
            fmt::format("{}: the {} was due {}, {}", condition_named(*time.condition, *facts.season),
                        time.duty.what, due_text(*time.due, zone),
                        time.late() ? "done " + instant_text(*time.done->done_at, zone) : "and is not done"));
    }
}

/// By both readings, where a revision waits: the fuller day.
std::optional<LargestUsed> largest_used(const Ledger& ledger, const JudgedLimits& limits,
                                        const LimitState& state, const ReturnFacts& facts) {
    const auto restated = largest_used(ledger, state, facts.period, facts.limits_at);
    if (limits.reported() == nullptr) return restated;
    const auto reported = largest_used(*limits.reported(), state, facts.period, facts.limits_at);
    return reported && (!restated || restated->used < reported->used) ? reported : restated;
}

/// Every reason against saying that all that was judged complied.
std::vector<std::string> reasons_of(const Ledger& ledger, const JudgedLimits& limits,
                                    const ReturnFacts& facts) {
    auto reasons = limit_reasons(ledger, limits, facts);
    for (const auto& line : facts.schedule) {
        if (line.place.verdict == PlaceVerdict::outside)
            reasons.push_back(fmt::format("{}: released {:.0f} m outside the ground", line.release->named(),
                                          -line.place.distance_m.value_or(0)));
        if (line.place.verdict == PlaceVerdict::cannot_tell)
            reasons.push_back(fmt::format("{}: it cannot be told whether it was inside ({})",
                                          line.release->named(), line.place.why));
    }
    for (const auto& judged : facts.judged)
        reasons.insert(reasons.end(), judged.reasons.begin(), judged.reasons.end());
    add_duty_reasons(facts, reasons);
    add_answer_reasons(facts, reasons);
    return reasons;
}

}  // namespace

Checked<ReturnFacts> gather_return(const Book& book, const Ledger& ledger, const ReturnAsk& ask) {
    const auto period = month_named(ledger.season().zone, ask.period);
    if (!period) return period.refusals();
    ReturnFacts facts;
    facts.season = &ledger.season();
    facts.period_name = ask.period;
    facts.period = *period;
    facts.as_at = ask.as_at;
    facts.limits_at = std::min(ask.as_at, period->to - 1);
    facts.journal_head = ask.journal_head;
    facts.made_by = ask.made_by;
    facts.schedule = schedule_of(ledger, *period, ask.as_at, ask.import_stamps_ms, ask.tracks);
    facts.totals = volumes(ledger, ask.as_at, {}, *period).front();
    for (const auto& line : facts.schedule)
        add_to(facts.printed, line, line.in_situ_m3);
    facts.by_claim = totals_by_claim(facts.schedule);
    facts.by_ground = totals_by(facts.schedule, &ScheduleLine::ground);
    facts.by_cell = totals_by(facts.schedule, &ScheduleLine::cell);
    facts.by_material = totals_by(facts.schedule, &ScheduleLine::material);
    Refusals unread;
    const JudgedLimits limits(ledger, ask.as_at);
    facts.limits = limits_in(limits, ledger.season(), *period, facts.limits_at, unread);
    facts.duties = duties_in(ledger, *period, ask.as_at, unread);
    if (!unread.empty()) return unread;
    for (const auto& state : facts.limits) {
        facts.largest_used.push_back(largest_used(ledger, limits, state, facts));
        facts.exceeded.push_back(exceeded_in(limits, state, *period, facts.limits_at));
    }
    facts.events = events_in(ledger.season(), *period, ask.as_at);
    fill_turbidity(book, ask, facts);
    facts.factors = factors_used(ledger, facts.schedule, ask.as_at);
    facts.reported = reported_amounts(ledger, *period, ask.as_at);
    BookRecords records(book);
    JudgedConditions judged;
    judge_releases(ledger, ask, facts, records, judged);
    facts.judged = std::move(judged).list();
    for (const auto& line : facts.schedule) {
        facts.late_entries += line.late ? 1 : 0;
        facts.imported_entries += line.imported ? 1 : 0;
    }
    facts.not_judged = not_judged_in(facts);
    facts.reasons = reasons_of(ledger, limits, facts);
    facts.missing = missing_in(ledger, facts);
    return facts;
}

}  // namespace spoilbook
