// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "model/consent/findings.h"
#include "model/consent/sea_level.h"

namespace spoilbook {

namespace {

/// What the trip recorded of the sea; nobody logs its wind.
std::optional<double> own_value(const LedgerLine& line, const std::string& variable) {
    if (line.release == nullptr || variable != "wave_height_m") return std::nullopt;
    return line.release->trip->wave_height_m;
}

Instant judged_at(const LedgerLine& line) {
    if (line.release != nullptr) return line.release->opened.value_or(line.at);
    return line.load->loading_start.value_or(line.at);
}

}  // namespace

std::vector<Finding> sea_findings(const Ledger& ledger, const Condition& condition, const JudgedSpan& span) {
    auto rule = series_rule_from(condition, ledger.season().zone);
    if (!rule || rule->variable == "turbidity") return {};
    const auto body = body_of(condition);
    const SeaLevel sea(ledger.season(), std::move(*rule));
    std::vector<Finding> findings;
    const auto judge_all = [&](const std::vector<LedgerLine>& lines) {
        const auto judged = judged_lines(ledger, lines, condition, body, span);
        findings.reserve(findings.size() + judged.size());
        for (const auto& [line, not_recorded] : judged) {
            Finding found = finding_on(ledger, condition, *line);
            auto answer = sea.at(judged_at(*line), own_value(*line, sea.rule().variable));
            if (answer.over) found.state = *answer.over ? Compliance::breached : Compliance::complied;
            found.why = std::move(answer.why);
            found.value = answer.value;
            found.level = answer.level;
            if (put_in_doubt(found, not_recorded)) findings.push_back(std::move(found));
        }
    };
    if (judges_releases(body)) judge_all(ledger.released());
    if (judges_dredging(body)) judge_all(ledger.dredged());
    return findings;
}

}  // namespace spoilbook
