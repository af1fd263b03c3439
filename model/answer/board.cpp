// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/board.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <utility>

#include "model/answer/board_state.h"
#include "model/answer/book_records.h"
#include "model/answer/place_findings.h"
#include "model/answer/surface_findings.h"

namespace spoilbook {

namespace {

using nlohmann::json;

class Boarding {
 public:
    Boarding(const Book& book, const Ledger& ledger, TripTracks& tracks, Instant as_at, Board& board)
        : ledger_(ledger),
          season_(ledger.season()),
          tracks_(tracks),
          board_(board),
          records_(book),
          // What of the period is blank may have been logged since.
          span_{as_at, board.period},
          limits_(ledger, board.at) {}

    void run() {
        for (const auto& condition : season_.conditions.rows()) {
            if (in_force(condition, board_.at)) board_.rows.push_back(row_of(condition));
        }
        for (const auto& condition : season_.conditions.rows()) {
            const bool past = condition.to && *condition.to <= board_.at;
            if (past) put_past(condition);
        }
        for (auto& row : board_.rows) {
            row.state = board_state(row, board_.at);
            if (row.condition->kind == "surface" && row.state == BoardState::nothing_yet)
                row.why = why_no_survey(*row.condition);
            const bool untold = row.reads && row.why.empty() && row.state == BoardState::cannot_tell;
            if (untold && is_turbidity(*row.condition))
                row.why = why_water_is_not_told(row, board_.at, season_.zone);
        }
    }

 private:
    BoardRow row_of(const Condition& condition) {
        BoardRow row;
        row.condition = &condition;
        row.consent = season_.consents.find(condition.consent);
        const json body = body_of(condition);
        row.reads = body.is_object();
        if (!row.reads) return row;
        row.open_question = body.value("open_question", "");
        const json settled = body.value("settled", json::object());
        row.settled_by = settled.value("by", "");
        row.settled_on = settled.value("on", "");
        row.settled_letter = settled.value("letter", "");
        row.why = not_judged(season_, condition, body);
        fill(condition, body, row);
        return row;
    }

    void fill(const Condition& condition, const json& body, BoardRow& row) {
        const std::string variable = body.value("variable", "");
        Refusals unread;
        if (condition.kind == "quantity") {
            row.limits = limits_.limits_of(condition, board_.at, &unread);
            row.findings = findings_of(ledger_, condition, span_, records_);
        } else if (condition.kind == "duty")
            row.duties = duties(duty_times(ledger_, condition, board_.at, &unread));
        else if (condition.kind == "series" && variable == "turbidity")
            fill_water(condition, row);
        else if (condition.kind == "place")
            row.findings = place(condition);
        else
            row.findings = findings_of(ledger_, condition, span_, records_);
        row.reads = unread.empty();
        board_.unread.insert(board_.unread.end(), unread.begin(), unread.end());
    }

    [[nodiscard]] std::string why_no_survey(const Condition& condition) const {
        const auto rule = surface_rule_from(body_of(condition));
        const auto missing = rule ? survey_not_there(season_, *rule) : std::string();
        return missing.empty() ? "no survey with a grid tells of it yet" : missing;
    }

    [[nodiscard]] static bool is_turbidity(const Condition& condition) {
        return condition.kind == "series" && body_of(condition).value("variable", "") == "turbidity";
    }

    /// Every condition of kind place judges a release by the same look at it, so all are judged at once.
    std::vector<Finding> place(const Condition& condition) {
        if (!places_) judge_places();
        return std::move((*places_)[&condition]);
    }

    void judge_places() {
        places_.emplace();
        std::unordered_map<const ReleaseView*, const LedgerLine*> lines;
        for (const auto& line : ledger_.released()) {
            if (span_.has(line.at)) lines.emplace(line.release, &line);
        }
        const PlaceConditions conditions(ledger_);
        for (const auto& place : release_places(ledger_, board_.at, &tracks_)) {
            const auto line = lines.find(place.release);
            if (line == lines.end()) continue;
            const auto* track = tracks_.of(*place.release->trip);
            for (auto& judged : conditions.judge(*line->second, place, track))
                (*places_)[judged.finding.condition].push_back(std::move(judged.finding));
        }
    }

    void fill_water(const Condition& condition, BoardRow& row) {
        const auto is_own = [&](const TriggerCondition* of) {
            return of->consent == row.consent && of->number == condition.condition;
        };
        for (auto& state : board_.water->states()) {
            if (is_own(state.of)) row.sites.push_back(std::move(state));
        }
        for (const auto& site : board_.water->sites()) {
            for (auto& record : board_.water->events(site.site)) {
                if (is_own(record.of) && touches(record.event)) row.events.push_back(std::move(record));
            }
        }
        std::stable_sort(row.events.begin(), row.events.end(),
                         [](const auto& a, const auto& b) { return a.event.start < b.event.start; });
    }

    [[nodiscard]] bool touches(const TriggerEvent& event) const {
        if (!board_.period) return true;
        return event.start < board_.period->to && (!event.end || *event.end >= board_.period->from);
    }

    /// Those that arose in the period or are open, and the next one to come.
    [[nodiscard]] std::vector<DutyTime> duties(std::vector<DutyTime> times) const {
        bool coming = false;
        std::erase_if(times, [&](const DutyTime& time) {
            if (time.state == DutyState::due || time.state == DutyState::overdue) return false;
            if (time.state == DutyState::coming) return std::exchange(coming, true);
            return !time.arises || !span_.has(*time.arises);
        });
        return times;
    }

    /// A version that is not in force any more: what fell to it, and what it asked for and is owed still,
    /// stands with the one that followed. A limit that nothing followed stands as it ended.
    void put_past(const Condition& condition) {
        BoardRow past = row_of(condition);
        const bool in_period = !board_.period || *condition.to > board_.period->from;
        if (condition.kind == "quantity")
            past.limits =
                in_period ? limits_.limits_of(condition, *condition.to - 1) : std::vector<LimitState>{};
        const bool counted = std::any_of(past.limits.begin(), past.limits.end(), [](const LimitState& limit) {
            return limit.used != 0 || limit.unknown > 0 || limit.first_over;
        });
        if (past.findings.empty() && past.duties.empty() && past.events.empty() && !counted) return;
        const auto same = std::find_if(board_.rows.begin(), board_.rows.end(), [&](const BoardRow& row) {
            return row.condition->consent == condition.consent &&
                   row.condition->condition == condition.condition;
        });
        if (same == board_.rows.end()) {
            past.in_force = false;
            board_.rows.push_back(std::move(past));
            return;
        }
        same->duties.insert(same->duties.begin(), past.duties.begin(), past.duties.end());
        same->findings.insert(same->findings.begin(), past.findings.begin(), past.findings.end());
        std::stable_sort(same->findings.begin(), same->findings.end(),
                         [](const Finding& a, const Finding& b) { return a.at < b.at; });
    }

    const Ledger& ledger_;
    const Season& season_;
    TripTracks& tracks_;
    Board& board_;
    BookRecords records_;
    JudgedSpan span_;
    JudgedLimits limits_;
    std::optional<std::unordered_map<const Condition*, std::vector<Finding>>> places_;
};

}  // namespace

std::size_t BoardRow::count(Compliance compliance) const {
    return static_cast<std::size_t>(
        std::count_if(findings.begin(), findings.end(),
                      [compliance](const Finding& found) { return found.state == compliance; }));
}

Board board(const Book& book, const Ledger& ledger, TripTracks& tracks, Instant as_at,
            std::optional<Period> period) {
    Board made;
    made.at = period ? std::min(as_at, period->to - 1) : as_at;
    made.period = period;
    made.water = std::make_unique<TurbidityWatch>(book, ledger.season(), made.at);
    Boarding(book, ledger, tracks, as_at, made).run();
    return made;
}

}  // namespace spoilbook
