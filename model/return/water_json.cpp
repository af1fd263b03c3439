// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/return/water_json.h"

namespace spoilbook {

namespace {

OrderedJson flags_json(const std::array<std::size_t, 10>& flags) {
    OrderedJson row;
    for (const std::size_t flag : {1U, 2U, 3U, 4U, 9U})
        row[std::to_string(flag)] = flags.at(flag);
    return row;
}

OrderedJson overruled_json(const OverruledReadings& overruled, const Zone& zone) {
    const auto& said = overruled.said;
    return {{"from", instant_or_null(said.from, zone)},
            {"to", instant_or_null(said.to, zone)},
            {"flag", said.flag},
            {"readings", overruled.readings},
            {"why", text_or_null(said.why)},
            {"by", text_or_null(said.by)}};
}

OrderedJson month_json(const SiteMonth& month, const Zone& zone) {
    OrderedJson row{{"site", month.site},
                    {"role", text_or_null(month.role)},
                    {"unit", text_or_null(month.unit)},
                    {"readings", month.readings},
                    {"counted", month.counted},
                    {"expected", number_or_null(month.expected)},
                    {"complete", number_or_null(month.complete())},
                    {"median", number_or_null(month.median)},
                    {"p95", number_or_null(month.p95)},
                    {"max", number_or_null(month.greatest)},
                    {"flags", flags_json(month.flags)},
                    {"flags_by_checks", flags_json(month.by_checks)},
                    {"calibration_expired", month.expired},
                    {"calibration_not_recorded", month.not_recorded}};
    row["hours_over"] = OrderedJson::array();
    for (const auto& over : month.over)
        row["hours_over"].push_back(
            {{"condition", over.condition}, {"tier", number_or_null(over.tier)}, {"hours", over.hours}});
    row["overruled"] = OrderedJson::array();
    for (const auto& overruled : month.overruled)
        row["overruled"].push_back(overruled_json(overruled, zone));
    return row;
}

OrderedJson trigger_json(const EventAnswer& answer, const Zone& zone) {
    const auto& record = answer.record;
    const Event none;
    const Event& said = answer.row == nullptr ? none : *answer.row;
    const auto* consent = record.of->consent;
    OrderedJson row{{"consent", consent == nullptr ? OrderedJson(nullptr) : OrderedJson(consent->consent)},
                    {"condition", record.of->number},
                    {"tier", number_or_null(record.version().rule.tier)},
                    {"site", record.event.site},
                    {"over_since", instant_text(record.event.over_since, zone)},
                    {"passed", instant_text(record.event.start, zone)},
                    {"all_clear", instant_or_null(record.event.end, zone)},
                    {"peak", record.event.peak},
                    {"peak_at", instant_text(record.event.peak_at, zone)},
                    {"due", instant_or_null(record.due, zone)}};
    row["responses"] = OrderedJson::array();
    for (const auto& response : record.responses)
        row["responses"].push_back({{"action", response.action}, {"to", text_or_null(response.to)}});
    row["answer"] = text(answer.state);
    row["cause"] = text_or_null(said.cause);
    row["told"] = text_or_null(said.told);
    row["told_at"] = instant_or_null(answer.told_at, zone);
    row["action"] = text_or_null(said.action);
    row["closed_by"] = text_or_null(said.closed_by);
    return row;
}

}  // namespace

OrderedJson water_json(const ReturnFacts& facts) {
    OrderedJson rows = OrderedJson::array();
    for (const auto& month : facts.water)
        rows.push_back(month_json(month, facts.season->zone));
    return rows;
}

OrderedJson triggers_json(const ReturnFacts& facts) {
    OrderedJson rows = OrderedJson::array();
    for (const auto& answer : facts.triggers)
        rows.push_back(trigger_json(answer, facts.season->zone));
    return rows;
}

}  // namespace spoilbook
