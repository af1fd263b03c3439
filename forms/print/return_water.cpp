// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <array>

#include "forms/print/figure_text.h"
#include "forms/print/return_tables.h"
#include "model/answer/event_answers.h"
#include "model/unit/number_text.h"

namespace spoilbook::print {

namespace {

constexpr std::array<std::size_t, 5> flag_values{1, 2, 3, 4, 9};

std::string tenth_shown(const std::optional<double>& value) {
    return value ? fmt::format("{:.1f}", *value) : "";
}

std::string tier_shown(const std::optional<double>& tier) {
    return tier ? number_text(*tier) : "";
}

Cell answer_cell(AnswerState state) {
    const std::string word(answer_word(state));
    switch (state) {
        case AnswerState::answered:
            return {word, Mark::met};
        case AnswerState::undated:
            return {word, Mark::unknown};
        case AnswerState::waiting:
            return {word, Mark::near};
        case AnswerState::late:
        case AnswerState::unanswered:
            break;
    }
    return {word, Mark::passed};
}

Table statistics_table(const std::vector<SiteMonth>& water) {
    Table table;
    table.caption = "By site: of the readings with flag 1 or 2, in the unit of the sensor";
    table.columns = {
        {"Site", "", Align::left, 1, false},     {"Role", "", Align::left, 0, false},
        {"Unit", "", Align::left, 0, false},     {"Readings", "", Align::right, 0, true},
        {"Counted", "", Align::right, 0, true},  {"Complete", "%", Align::right, 0, true},
        {"Median", "", Align::right, 0, true},   {"95th percentile", "", Align::right, 0, true},
        {"Greatest", "", Align::right, 0, true}, {"Calibration expired", "", Align::right, 0, true}};
    for (const auto& month : water) {
        const auto complete = month.complete();
        table.rows.push_back({month.site, month.role, month.unit, std::to_string(month.readings),
                              std::to_string(month.counted),
                              complete ? fmt::format("{:.1f}", *complete * 100) : "not known",
                              tenth_shown(month.median), tenth_shown(month.p95), tenth_shown(month.greatest),
                              std::to_string(month.expired)});
    }
    table.zero_rows_text = "No turbidity site is in the book.";
    table.notes = {
        "Complete: counted over what the site's interval would give. Readings of an expired "
        "calibration are counted all the same."};
    return table;
}

Table hours_table(const std::vector<SiteMonth>& water) {
    Table table;
    table.caption = "Hours over each trigger's level, passed or not";
    table.columns = {{"Site", "", Align::left, 1, false},
                     {"Condition", "", Align::left, 0, true},
                     {"Tier", "", Align::right, 0, true},
                     {"Over", "h", Align::right, 0, true}};
    for (const auto& month : water) {
        for (const auto& over : month.over)
            table.rows.push_back(
                {month.site, over.condition, tier_shown(over.tier), tenth_shown(over.hours)});
    }
    return table;
}

Table flags_table(const std::vector<SiteMonth>& water) {
    Table table;
    table.caption = "Flags: 1 pass, 2 not evaluated, 3 suspect, 4 fail, 9 missing";
    table.columns = {{"Site", "", Align::left, 1, false}, {"Flags", "", Align::left, 0, false}};
    for (const auto value : flag_values)
        table.columns.push_back({std::to_string(value), "", Align::right, 0, true});
    for (const auto& month : water) {
        Row checked{month.site, "by the checks"};
        Row reported{month.site, "as reported"};
        for (const auto value : flag_values) {
            checked.emplace_back(std::to_string(month.by_checks.at(value)));
            reported.emplace_back(std::to_string(month.flags.at(value)));
        }
        table.rows.push_back(std::move(checked));
        if (month.flags != month.by_checks) table.rows.push_back(std::move(reported));
    }
    return table;
}

Table overruled_table(const std::vector<SiteMonth>& water, const Zone& zone) {
    Table table;
    table.caption = "Flags that a person set in place of the checks'; raw readings stay as they came";
    table.columns = {{"Site", "", Align::left, 0, false},     {"From", "", Align::left, 0, true},
                     {"To", "", Align::left, 0, true},        {"Flag", "", Align::right, 0, true},
                     {"Readings", "", Align::right, 0, true}, {"Why", "", Align::left, 2, false},
                     {"By", "", Align::left, 1, false}};
    for (const auto& month : water) {
        for (const auto& [said, readings] : month.overruled)
            table.rows.push_back({month.site, clock_shown(said.from, zone),
                                  clock_shown(said.to ? said.to : said.from, zone), said.flag,
                                  std::to_string(readings), said.why, said.by});
    }
    table.zero_rows_text = "No flag was overruled in the period.";
    return table;
}

}  // namespace

void add_triggers(const ReturnFacts& facts, std::vector<Block>& blocks) {
    if (!facts.turbidity) return;
    blocks.emplace_back(Heading{1, "Turbidity triggers passed"});
    const Zone& zone = facts.season->zone;
    Table table;
    table.columns = {{"Condition", "", Align::left, 0, true}, {"Tier", "", Align::right, 0, true},
                     {"Site", "", Align::left, 0, false},     {"Passed", "", Align::left, 0, true},
                     {"All clear", "", Align::left, 0, true}, {"Peak", "", Align::right, 0, true},
                     {"Due", "", Align::left, 0, true},       {"Answer", "", Align::left, 0, false},
                     {"Cause", "", Align::left, 2, false},    {"Told", "", Align::left, 2, false},
                     {"Done", "", Align::left, 2, false}};
    for (const auto& answer : facts.triggers) {
        const auto& record = answer.record;
        const Event none;
        const Event& said = answer.row == nullptr ? none : *answer.row;
        table.rows.push_back({record.of->number, tier_shown(record.version().rule.tier), record.event.site,
                              clock_shown(record.event.start, zone),
                              record.event.end ? clock_shown(record.event.end, zone) : "open",
                              tenth_shown(record.event.peak), due_clock_shown(record.due, zone),
                              answer_cell(answer.state), said.cause, said.told, said.action});
    }
    table.zero_rows_text = "No turbidity trigger was passed in the period.";
    blocks.emplace_back(std::move(table));
}

void add_turbidity(const ReturnFacts& facts, std::vector<Block>& blocks) {
    if (!facts.turbidity) return;
    blocks.emplace_back(Heading{1, "Turbidity"});
    blocks.emplace_back(statistics_table(facts.water));
    if (facts.water.empty()) return;
    blocks.emplace_back(hours_table(facts.water));
    blocks.emplace_back(flags_table(facts.water));
    blocks.emplace_back(overruled_table(facts.water, facts.season->zone));
}

}  // namespace spoilbook::print
