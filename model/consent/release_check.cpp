// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/release_check.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "model/consent/as_reported.h"
#include "model/consent/due_cell.h"
#include "model/consent/duty.h"
#include "model/consent/duty_check.h"
#include "model/consent/finding.h"
#include "model/consent/kind_checks.h"
#include "model/consent/limit.h"
#include "model/consent/place_rule.h"
#include "model/consent/quantity_check.h"

namespace spoilbook {

namespace {

using nlohmann::json;

/// Judges every condition against one planned release.
class Checker {
 public:
    Checker(const Ledger& done, const PlannedRelease& planned, const CheckFacts& facts)
        : season_(done.season()),
          planned_(planned),
          facts_(facts),
          done_(done),
          ledger_(ledger_with(done, planned)) {}

    ReleaseCheck run(CellRooms* cells = nullptr) {
        cells_ = cells;
        for (const auto& condition : season_.conditions.rows()) {
            if (is_asked(condition)) judge(condition);
        }
        for (const auto& reason : check_.reasons)
            check_.verdict = std::max(check_.verdict, reason.state);
        if (cells != nullptr) close_cells();
        return std::move(check_);
    }

 private:
    /// A duty that a former version asked for is owed still.
    [[nodiscard]] bool is_asked(const Condition& condition) const {
        if (condition.kind != "duty") return in_force(condition, planned_.at);
        return !condition.from || *condition.from <= planned_.at;
    }

    void judge(const Condition& condition) {
        try {
            judge_body(condition, json::parse(condition.body.empty() ? "{}" : condition.body));
        } catch (const json::exception&) {
            add(condition, unread());
        }
    }

    static CheckReason unread() { return reason_of(CheckState::cannot_tell, "its members do not read"); }

    void judge_body(const Condition& condition, const json& body) {
        if (condition.kind == "quantity") return judge_quantity(condition);
        const LedgerLine* line = planned_line();
        if (!judges_releases(body) || line == nullptr || !applies_to(ledger_, *line, body, true)) return;
        if (condition.kind == "place")
            add(condition, judge_place(body, season_, ledger_.grounds(), place(), planned_.position_u_m));
        else if (condition.kind == "time")
            add(condition, check_time(ledger_, body, planned_));
        else if (condition.kind == "series")
            judge_series(condition, *line);
        else if (condition.kind == "duty")
            judge_blocking_duty(condition);
        else if (condition.kind == "record")
            add(condition, check_record(ledger_, body, *line));
        else if (condition.kind == "watch")
            judge_watch(condition, body);
        else if (condition.kind == "surface")
            add(condition, check_surface(condition, *line, facts_));
    }

    /// A duty is owed by what was done, the load's own trips too: not by what the plan makes of it.
    void judge_blocking_duty(const Condition& condition) {
        const auto duty = duty_from(condition, season_.zone);
        if (duty && !duty->blocks_release) return;
        add(condition, judge_duty(done_, condition, planned_.at));
    }

    void judge_series(const Condition& condition, const LedgerLine& line) {
        auto rule = series_rule_from(condition, season_.zone);
        if (!rule) return add(condition, unread());
        if (rule->variable == "turbidity")
            add(condition, check_water(ledger_, condition, *rule, line, facts_));
        else
            add(condition, check_sea(season_, std::move(*rule), planned_));
    }

    void judge_watch(const Condition& condition, const json& body) {
        add(condition, check_watch(season_, body, planned_, facts_));
        auto task = watch_to_keep(season_, body, planned_, facts_);
        if (!task) return;
        task->condition = &condition;
        task->consent = season_.consents.find(condition.consent);
        check_.to_do.push_back(std::move(*task));
    }

    void add(const Condition& condition, CheckReason reason) {
        if (reason.state == CheckState::clear) return;
        reason.condition = &condition;
        reason.consent = season_.consents.find(condition.consent);
        if (reason.state == CheckState::hold) reason.until = end_of_hold(condition, reason.until);
        // Two versions of one duty may each be owed: one reason says so.
        const auto same = std::find_if(check_.reasons.begin(), check_.reasons.end(), [&](const auto& other) {
            return condition.kind == "duty" && other.condition->consent == condition.consent &&
                   other.condition->condition == condition.condition;
        });
        if (same == check_.reasons.end())
            check_.reasons.push_back(std::move(reason));
        else if (same->state < reason.state)
            *same = std::move(reason);
    }

    /// A version holds no longer than it is in force; from then on the next one judges, if there is one, of
    /// what was done by the planned instant. Only the record ends a duty. A rule of tides whose state is not
    /// known up to then has no end that could be told.
    [[nodiscard]] std::optional<Instant> end_of_hold(const Condition& condition,
                                                     std::optional<Instant> until) const {
        if (condition.kind == "duty" || !condition.to || (until && *until < *condition.to)) return until;
        if (condition.kind == "time" && !time_holds_to(ledger_, body_of(condition), planned_, *condition.to))
            return std::nullopt;
        PlannedRelease then = planned_;
        then.at = *condition.to;
        std::vector<const Condition*> following;
        for (const auto& next : season_.conditions.rows()) {
            const bool follows = next.consent == condition.consent && next.condition == condition.condition &&
                                 in_force(next, then.at);
            if (follows) following.push_back(&next);
        }
        if (following.empty()) return condition.to;
        // What goes before this load went at the planned instant, however long this one is held.
        const Season season = done_by(ledger_, planned_);
        const Ledger done(season);
        for (const auto* next : following) {
            Checker checker(done, then, facts_);
            checker.judge(*next);
            for (const auto& reason : checker.check_.reasons) {
                if (reason.state == CheckState::hold) return reason.until;
            }
        }
        return condition.to;
    }

    void judge_quantity(const Condition& condition) {
        const auto quantity = quantity_from(condition, season_.zone);
        if (!quantity) return add(condition, unread());
        if (quantity->scope.activity == Activity::dredge || !quantity->at_most) return;
        const QuantityCheck check(ledger_, condition, *quantity, planned_.load, planned_.at);
        add(condition, check.reason());
        if (quantity->each_of == EachOf::cell && cells_ != nullptr)
            cells_->add(quantity->scope.cells.empty() ? check.rooms() : rooms_anywhere(condition, *quantity));
    }

    /// Of a limit that names its cells, wherever this load is planned to go.
    [[nodiscard]] std::vector<MemberRoom> rooms_anywhere(const Condition& condition,
                                                         const Quantity& quantity) const {
        const auto anywhere = going_to(planned_, Id{});
        const Ledger ledger = ledger_with(done_, anywhere);
        return QuantityCheck(ledger, condition, quantity, planned_.load, planned_.at).rooms();
    }

    /// Each open cell is tried under the conditions that may close one of them.
    void close_cells() {
        std::vector<const Condition*> closing;
        for (const auto& condition : season_.conditions.rows()) {
            const auto body = body_of(condition);
            if (in_force(condition, planned_.at) && body.is_object() &&
                tells_cells_apart(condition, body, season_.zone))
                closing.push_back(&condition);
        }
        if (closing.empty()) return;
        for (const auto& cell : cells_->open(season_, planned_.ground)) {
            const auto there = going_to(planned_, cell);
            Checker checker(done_, there, facts_);
            for (const auto* condition : closing)
                checker.judge(*condition);
            const auto& reasons = checker.check_.reasons;
            const bool holds = std::any_of(reasons.begin(), reasons.end(), [](const CheckReason& reason) {
                return reason.state == CheckState::hold;
            });
            if (holds) cells_->close(cell);
        }
    }

    /// The planned release as the ledger has it.
    [[nodiscard]] const LedgerLine* planned_line() const {
        const auto lines = lines_between(ledger_.released(), planned_.at, planned_.at);
        const auto own = std::find_if(lines.begin(), lines.end(), [&](const LedgerLine& line) {
            return line.release->trip == &ledger_.instead().front();
        });
        return own == lines.end() ? nullptr : &*own;
    }

    [[nodiscard]] std::optional<EastNorth> place() const {
        const auto& map = ledger_.grounds();
        if (map.crs() && planned_.lat && planned_.lon)
            return map.crs()->project(LonLat{*planned_.lat, *planned_.lon});
        const Area cell = map.open_cell(planned_.cell);
        if (cell.parts.empty()) return std::nullopt;
        return farthest_inside(cell);
    }

    const Season& season_;
    const PlannedRelease& planned_;
    const CheckFacts& facts_;
    const Ledger& done_;
    Ledger ledger_;  ///< with the plan
    ReleaseCheck check_;
    CellRooms* cells_ = nullptr;  ///< null: nobody asks which cell is due
};

CheckReason* same_condition(std::vector<CheckReason>& reasons, const CheckReason& reason) {
    const auto found = std::find_if(reasons.begin(), reasons.end(), [&](const CheckReason& other) {
        return other.condition->id == reason.condition->id;
    });
    return found == reasons.end() ? nullptr : &*found;
}

/// Whether a holds harder, or longer, than b.
bool is_stricter(const CheckReason& a, const CheckReason& b) {
    if (a.state != b.state) return a.state > b.state;
    return b.until && (!a.until || *a.until > *b.until);
}

/// The release as reported, `other`, beside the one as restated: of each condition the stricter answer.
void take_stricter(const ReleaseCheck& other, const Season& season, ReleaseCheck& check) {
    for (CheckReason reason : other.reasons) {
        CheckReason* own = same_condition(check.reasons, reason);
        if (own != nullptr && !is_stricter(reason, *own)) continue;
        reason.condition = season.conditions.find(reason.condition->id);
        reason.consent = season.consents.find(reason.condition->consent);
        if (own != nullptr)
            *own = std::move(reason);
        else
            check.reasons.push_back(std::move(reason));
    }
    check.verdict = std::max(check.verdict, other.verdict);
}

}  // namespace

CheckReason reason_of(CheckState state, std::string why, std::optional<Instant> until) {
    return {nullptr, nullptr, state, until, std::move(why)};
}

std::string check_text(CheckState state) {
    switch (state) {
        case CheckState::clear:
            return "clear";
        case CheckState::cannot_tell:
            return "cannot_tell";
        case CheckState::hold:
            break;
    }
    return "hold";
}

Checked<ReleaseCheck> check_release(const Ledger& done, PlannedRelease planned, const CheckFacts& facts) {
    const Season& season = done.season();
    if (season.loads.find(planned.load) == nullptr)
        return Refusal{"no-such-row", "load", "there is no such load", "look its number up"};
    planned = completed(done, planned);
    CellRooms cells;
    auto check = Checker(done, planned, facts).run(&cells);
    if (const auto reported = season_as_reported(season, planned.at)) {
        const Ledger as_reported(*reported);
        take_stricter(Checker(as_reported, planned, facts).run(&cells), season, check);
    }
    check.due_cell = cells.due(season, planned.ground);
    return check;
}

}  // namespace spoilbook
