// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/duty.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

using nlohmann::json;

/// The step of {every: {measure, value}} counts as a limit over the whole term does.
Quantity counted_from(const Condition& condition, const json& body, const json& every, const Zone& zone) {
    Condition limit = condition;
    json members{{"measure", every.at("measure")}, {"window", {{"kind", "term"}}}};
    if (body.contains("applies")) members["applies"] = body.at("applies");
    limit.body = members.dump();
    const auto quantity = quantity_from(limit, zone);
    if (!quantity) throw std::invalid_argument("every");
    return *quantity;
}

void read_date(const std::string& text, const Zone& zone, Duty& duty) {
    const auto at = parse_instant_or_day(text, zone);
    if (!at) throw std::invalid_argument("on_date");
    duty.when = DutyWhen::date;
    duty.on = *at;
    duty.on_whole_day = static_cast<bool>(parse_day(text));
}

void read_when(const Condition& condition, const json& body, const Zone& zone, Duty& duty) {
    const auto& when = body.at("when");
    if (when.contains("cycle")) {
        const auto cycle = when.at("cycle").get<std::string>();
        duty.when = cycle == "month"     ? DutyWhen::month
                    : cycle == "quarter" ? DutyWhen::quarter
                                         : DutyWhen::year;
    } else if (when.contains("on_event")) {
        duty.when = DutyWhen::event;
        duty.event = when.at("on_event").get<std::string>();
    } else if (when.contains("every")) {
        duty.when = DutyWhen::amount;
        duty.every = when.at("every").at("value").get<double>();
        if (!(duty.every > 0)) throw std::invalid_argument("every");
        duty.counted = counted_from(condition, body, when.at("every"), zone);
    } else {
        read_date(when.at("on_date").get<std::string>(), zone, duty);
    }
}

}  // namespace

Checked<Duty> duty_from(const Condition& condition, const Zone& zone) {
    try {
        const auto body = json::parse(condition.body);
        Duty duty;
        duty.what = body.at("what").get<std::string>();
        read_when(condition, body, zone, duty);
        if (body.contains("due")) {
            const auto& due = body.at("due");
            duty.due_n = due.at("n").get<double>();
            duty.due_unit = due.at("unit").get<std::string>();
            duty.due_after = due.value("after", "");
        }
        duty.nil_required = body.value("nil_required", false);
        const auto blocks = body.value("blocks", std::vector<std::string>{});
        duty.blocks_dredge = std::find(blocks.begin(), blocks.end(), "dredge") != blocks.end();
        duty.blocks_release = std::find(blocks.begin(), blocks.end(), "release") != blocks.end();
        duty.scope = scope_from(body);
        return duty;
    } catch (const std::exception&) {
        return Refusal{"condition-does-not-read", "condition " + condition.condition,
                       "what it asks for does not read", "see docs/conditions.md"};
    }
}

}  // namespace spoilbook
