// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/release_check.h"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "model/consent/as_reported.h"
#include "model/consent/duty_check.h"
#include "model/consent/limit.h"
#include "model/consent/place_rule.h"
#include "model/consent/quantity_check.h"
#include "model/consent/scope_filter.h"
#include "model/consent/time_state.h"

namespace spoilbook {

namespace {

using nlohmann::json;

constexpr double usual_max_age_hours = 3;

/// Judges every condition against one planned release.
class Checker {
 public:
    Checker(const Season& season, const PlannedRelease& planned)
        : season_(season),
          planned_(planned),
          what_if_(with_release(season, planned)),
          ledger_(what_if_.season) {}

    ReleaseCheck run() {
        for (const auto& condition : season_.conditions.rows()) {
            if (in_force(condition, planned_.at)) judge(condition);
        }
        for (const auto& reason : check_.reasons)
            check_.verdict = std::max(check_.verdict, reason.state);
        return std::move(check_);
    }

 private:
    void judge(const Condition& condition) {
        try {
            judge_body(condition, json::parse(condition.body.empty() ? "{}" : condition.body));
        } catch (const json::exception&) {
            add(condition,
                {nullptr, nullptr, CheckState::cannot_tell, std::nullopt, "its members do not read"});
        }
    }

    void judge_body(const Condition& condition, const json& body) {
        if (condition.kind == "quantity")
            judge_quantity(condition);
        else if (!applies(body))
            return;
        else if (condition.kind == "place")
            add(condition, judge_place(body, season_, ledger_.grounds(), place(), planned_.position_u_m));
        else if (condition.kind == "time")
            add(condition, judge_time(body));
        else if (condition.kind == "series")
            add(condition, judge_series(body));
        else if (condition.kind == "duty")
            add(condition, judge_duty(ledger_, condition, planned_.at));
    }

    void add(const Condition& condition, CheckReason reason) {
        if (reason.state == CheckState::clear) return;
        reason.condition = &condition;
        reason.consent = season_.consents.find(condition.consent);
        if (reason.state == CheckState::hold) reason.until = end_of_hold(condition, reason.until);
        check_.reasons.push_back(std::move(reason));
    }

    /// A version holds no longer than it is in force; from then on the next one judges, if there is one.
    [[nodiscard]] std::optional<Instant> end_of_hold(const Condition& condition,
                                                     std::optional<Instant> until) const {
        if (!condition.to || (until && *until <= *condition.to)) return until;
        PlannedRelease then = planned_;
        then.at = *condition.to;
        for (const auto& next : season_.conditions.rows()) {
            const bool follows = next.consent == condition.consent && next.condition == condition.condition &&
                                 in_force(next, then.at);
            if (!follows) continue;
            Checker checker(season_, then);
            checker.judge(next);
            for (const auto& reason : checker.check_.reasons) {
                if (reason.state == CheckState::hold) return reason.until;
            }
        }
        return condition.to;
    }

    void judge_quantity(const Condition& condition) {
        const auto quantity = quantity_from(condition, season_.zone);
        if (!quantity)
            return add(condition,
                       {nullptr, nullptr, CheckState::cannot_tell, std::nullopt, "its members do not read"});
        if (quantity->scope.activity == Activity::dredge || !quantity->at_most) return;
        const QuantityCheck check(ledger_, condition, *quantity, planned_.load, planned_.at);
        add(condition, check.reason());
        if (quantity->each_of == EachOf::cell && check_.due_cell.empty())
            check_.due_cell = check.due_member();
    }

    /// Whether a condition of another kind is about this release at all, or may be.
    [[nodiscard]] bool applies(const json& body) const {
        if (body.contains("applies") && body.at("applies").value("activity", "both") == "dredge")
            return false;
        const Scope scope = scope_from(body);
        const ScopeFilter filter(scope, season_, true);
        for (const auto& line : ledger_.released()) {
            if (line.release->trip->id != what_if_.trip) continue;
            const auto& parts = line.figures->parts;
            return filter.takes(line) &&
                   (!filter.by_part() || std::any_of(parts.begin(), parts.end(), [&](const LoadPart& part) {
                       return filter.takes(part, planned_.at);
                   }));
        }
        return true;
    }

    [[nodiscard]] std::optional<EastNorth> place() const {
        const auto& map = ledger_.grounds();
        if (map.crs() && planned_.lat && planned_.lon)
            return map.crs()->project(LonLat{*planned_.lat, *planned_.lon});
        const Area cell = map.open_cell(planned_.cell);
        if (cell.parts.empty()) return std::nullopt;
        return farthest_inside(cell);
    }

    [[nodiscard]] CheckReason judge_time(const json& body) const {
        const auto rule = time_rule_from(body);
        if (!rule) return {nullptr, nullptr, CheckState::cannot_tell, std::nullopt, "its times do not read"};
        const TideLevels tide(season_.tides);
        const TimeSite by{season_.zone, rule->by_day ? sun_site() : std::nullopt, tide};
        const auto held = hold_state(*rule, by, planned_.at);
        if (!held)
            return {nullptr, nullptr, CheckState::cannot_tell, std::nullopt,
                    what_is_missing(*rule, by, planned_.at)};
        if (!*held) return {nullptr, nullptr, CheckState::clear, std::nullopt, ""};
        return {nullptr, nullptr, CheckState::hold, hold_ends(*rule, by, planned_.at), "not at this time"};
    }

    /// Where sunrise and sunset are looked at: the middle of the release's ground, else of the first one.
    [[nodiscard]] std::optional<LonLat> sun_site() const {
        const auto& map = ledger_.grounds();
        const Area* ground = map.open_ground(planned_.ground);
        for (const auto& other : season_.grounds.rows()) {
            if (ground == nullptr) ground = map.open_ground(other.id);
        }
        if (ground == nullptr || ground->parts.empty()) return std::nullopt;
        return map.crs()->unproject(farthest_inside(*ground));
    }

    [[nodiscard]] CheckReason judge_series(const json& body) const {
        if (body.value("variable", "") != "wave_height_m") return judge_other_series(body);
        const double max_age_hours = body.value("max_age_hours", usual_max_age_hours);
        const auto height = planned_.wave_height_m ? planned_.wave_height_m : last_wave_height(max_age_hours);
        if (!height)
            return {nullptr, nullptr, CheckState::cannot_tell, std::nullopt,
                    fmt::format("no wave height of the last {} h: log an observation, or the trip's own",
                                max_age_hours)};
        const auto& compare = body.at("compare");
        if (!compare.contains("absolute"))
            return {nullptr, nullptr, CheckState::cannot_tell, std::nullopt,
                    "this comparison cannot be judged yet"};
        const double limit = compare.at("absolute").get<double>();
        if (*height <= limit) return {nullptr, nullptr, CheckState::clear, std::nullopt, ""};
        return {nullptr, nullptr, CheckState::hold, std::nullopt,
                fmt::format("wave height {} m is above {} m", *height, limit)};
    }

    /// A series that is not evaluated yet matters here only where passing it stops the work.
    [[nodiscard]] static CheckReason judge_other_series(const json& body) {
        for (const auto& response : body.value("responses", json::array())) {
            const auto action = response.value("action", "");
            if (action == "stop" || action == "change_cell")
                return {nullptr, nullptr, CheckState::cannot_tell, std::nullopt,
                        "its series cannot be judged yet"};
        }
        return {nullptr, nullptr, CheckState::clear, std::nullopt, ""};
    }

    [[nodiscard]] std::optional<double> last_wave_height(double max_age_hours) const {
        const Observation* last = nullptr;
        for (const auto& seen : season_.observations.rows()) {
            const bool known = seen.time && *seen.time <= planned_.at && seen.wave_height_m;
            if (known && (last == nullptr || *last->time <= *seen.time)) last = &seen;
        }
        const auto oldest = static_cast<std::int64_t>(max_age_hours * static_cast<double>(ms_per_hour));
        if (last == nullptr || planned_.at - *last->time > oldest) return std::nullopt;
        return last->wave_height_m;
    }

    const Season& season_;
    const PlannedRelease& planned_;
    WhatIf what_if_;
    Ledger ledger_;
    ReleaseCheck check_;
};

/// The ground of a cell, where only the cell was given.
void complete(const Season& season, PlannedRelease& planned) {
    const Cell* cell = season.cells.find(planned.cell);
    if (!planned.ground && cell != nullptr) planned.ground = cell->ground;
}

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

Checked<ReleaseCheck> check_release(const Season& season, PlannedRelease planned) {
    if (season.loads.find(planned.load) == nullptr)
        return Refusal{"no-such-row", "load", "there is no such load", "look its number up"};
    complete(season, planned);
    auto check = Checker(season, planned).run();
    if (const auto reported = season_as_reported(season, planned.at))
        take_stricter(Checker(*reported, planned).run(), season, check);
    return check;
}

}  // namespace spoilbook
