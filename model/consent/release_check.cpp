// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/release_check.h"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "model/consent/limit.h"
#include "model/consent/place_rule.h"
#include "model/consent/quantity_check.h"
#include "model/consent/time_rule.h"

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
        const auto body = json::parse(condition.body.empty() ? "{}" : condition.body, nullptr, false);
        if (body.is_discarded())
            return add(condition,
                       {nullptr, nullptr, CheckState::cannot_tell, std::nullopt, "its members do not read"});
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
    }

    void add(const Condition& condition, CheckReason reason) {
        if (reason.state == CheckState::clear) return;
        reason.condition = &condition;
        reason.consent = season_.consents.find(condition.consent);
        check_.reasons.push_back(std::move(reason));
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

    /// Whether a condition of another kind is about this release at all.
    [[nodiscard]] bool applies(const json& body) const {
        if (!body.contains("applies")) return true;
        const auto& scope = body.at("applies");
        if (scope.value("activity", "both") == "dredge") return false;
        const Trip* trip = what_if_.season.trips.find(what_if_.trip);
        const Load* load = season_.loads.find(planned_.load);
        return named(scope, "grounds", season_.grounds.find(trip->ground), &Ground::ground) &&
               named(scope, "cells", season_.cells.find(trip->cell), &Cell::cell) &&
               named(scope, "materials", season_.materials.find(load->material), &Material::material) &&
               named(scope, "plant", season_.barges.find(load->barge), &Barge::name);
    }

    /// True where the list is empty, holds the row's name, or the row is not known: then it may apply.
    template <class R>
    static bool named(const json& scope, const char* list, const R* row, std::string R::*name) {
        if (!scope.contains(list) || scope.at(list).empty() || row == nullptr) return true;
        const auto names = scope.at(list).get<std::vector<std::string>>();
        return std::find(names.begin(), names.end(), row->*name) != names.end();
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
        if (rule->needs_more)
            return {nullptr, nullptr, CheckState::cannot_tell, std::nullopt,
                    "daylight and tide cannot be judged yet"};
        if (!holds_at(*rule, season_.zone, planned_.at))
            return {nullptr, nullptr, CheckState::clear, std::nullopt, ""};
        return {nullptr, nullptr, CheckState::hold, holds_until(*rule, season_.zone, planned_.at),
                "not at this time"};
    }

    [[nodiscard]] CheckReason judge_series(const json& body) const {
        if (body.value("variable", "") != "wave_height_m") return judge_other_series(body);
        const double max_age_hours = body.value("max_age_hours", usual_max_age_hours);
        const auto height = planned_.wave_height_m ? planned_.wave_height_m : last_wave_height(max_age_hours);
        if (!height)
            return {nullptr, nullptr, CheckState::cannot_tell, std::nullopt,
                    fmt::format("no wave height of the last {} h", max_age_hours)};
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
    return Checker(season, planned).run();
}

}  // namespace spoilbook
