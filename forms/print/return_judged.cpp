// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "forms/print/figure_text.h"
#include "forms/print/return_tables.h"
#include "model/unit/shown.h"

namespace spoilbook::print {

namespace {

Cell state_cell(Compliance state) {
    const Mark mark = state == Compliance::complied   ? Mark::met
                      : state == Compliance::breached ? Mark::passed
                                                      : Mark::unknown;
    return {in_words(text(state)), mark};
}

Column fixed(const char* title) {
    return {title, "", Align::left, 0, true};
}
Column words(const char* title, double weight = 0) {
    return {title, "", Align::left, weight, false};
}
Column count(const char* title) {
    return {title, "", Align::right, 0, true};
}

}  // namespace

void add_statement(const ReturnFacts& facts, std::vector<Block>& blocks) {
    blocks.emplace_back(Heading{2, "Statement of compliance"});
    if (facts.reasons.empty()) {
        std::string met =
            "Every limit on a quantity stood at or below its value, and every release was inside its ground "
            "by at least twice the uncertainty of its position.";
        if (!facts.judged.empty())
            met += " All that was done complied with every condition that it is held against below.";
        blocks.emplace_back(Paragraph{std::move(met)});
        return;
    }
    blocks.emplace_back(Paragraph{"The following stands against saying that every condition was met:"});
    Table table;
    table.columns = {count("No."), words("Matter", 1)};
    for (std::size_t i = 0; i < facts.reasons.size(); ++i)
        table.rows.push_back({std::to_string(i + 1), facts.reasons[i]});
    blocks.emplace_back(std::move(table));
}

void add_judged(const ReturnFacts& facts, std::vector<Block>& blocks) {
    if (facts.judged.empty()) return;
    Table table;
    table.caption = "Conditions held against what was done";
    table.columns = {fixed("Condition"),   words("What", 1),  count("Complied"),
                     count("Cannot tell"), count("Breached"), words("State")};
    for (const auto& judged : facts.judged)
        table.rows.push_back({judged.condition->condition, judged.condition->text,
                              std::to_string(judged.complied), std::to_string(judged.cannot_tell),
                              std::to_string(judged.breached), state_cell(judged.state())});
    blocks.emplace_back(std::move(table));
}

void add_not_judged(const ReturnFacts& facts, std::vector<Block>& blocks) {
    if (facts.not_judged.empty()) return;
    Table table;
    table.caption = "Not judged by this return, and to be answered beside it";
    table.columns = {fixed("Condition"), words("What", 1), words("Why not", 1)};
    for (const auto& one : facts.not_judged)
        table.rows.push_back({one.condition->condition, one.condition->text, one.why});
    blocks.emplace_back(std::move(table));
}

void add_failed(const ReturnFacts& facts, std::vector<Block>& blocks) {
    Table table;
    table.columns = {fixed("Condition"), fixed("What"),  fixed("Load"),
                     fixed("When"),      words("State"), words("Why", 1)};
    for (const auto& judged : facts.judged) {
        for (const auto& finding : judged.failed)
            table.rows.push_back({judged.condition->condition, finding.named(),
                                  finding.load == nullptr ? "" : finding.load->load,
                                  clock_shown(finding.at, facts.season->zone), state_cell(finding.state),
                                  finding.why});
    }
    if (table.rows.empty()) return;
    blocks.emplace_back(Heading{1, "What did not comply, or cannot be told"});
    blocks.emplace_back(std::move(table));
}

}  // namespace spoilbook::print
