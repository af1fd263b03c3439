// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/return/condition_judged.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

namespace spoilbook {

namespace {

/// What failed for one cause.
struct Cause {
    std::string why;
    std::vector<std::string> names;  ///< each once: a trip and its one release have the same name
};

std::vector<Cause> causes_of(const std::vector<Finding>& failed, Compliance state) {
    std::vector<Cause> causes;
    for (const auto& finding : failed) {
        if (finding.state != state) continue;
        auto same = std::find_if(causes.begin(), causes.end(),
                                 [&](const Cause& cause) { return cause.why == finding.why; });
        if (same == causes.end()) same = causes.insert(causes.end(), {finding.why, {}});
        const auto name = finding.named();
        auto& names = same->names;
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    }
    return causes;
}

void add_reasons(ConditionJudged& judged) {
    const auto& number = judged.condition->condition;
    for (const auto& cause : causes_of(judged.failed, Compliance::breached))
        judged.reasons.push_back(
            fmt::format("condition {}, {}: {}", number, fmt::join(cause.names, ", "), cause.why));
    for (const auto& cause : causes_of(judged.failed, Compliance::cannot_tell)) {
        const auto more = cause.names.size() - 1;
        judged.reasons.push_back(fmt::format("condition {}: it cannot be told of {}{} ({})", number,
                                             cause.names.front(),
                                             more == 0 ? "" : fmt::format(" and {} more", more), cause.why));
    }
}

}  // namespace

ConditionJudged& JudgedConditions::judged(const Condition& condition) {
    const auto same = [&](const ConditionJudged& one) {
        return one.condition->consent == condition.consent && one.condition->condition == condition.condition;
    };
    const auto found = std::find_if(all_.begin(), all_.end(), same);
    return found != all_.end() ? *found : all_.emplace_back();
}

void JudgedConditions::add(const Finding& finding) {
    auto& judged = this->judged(*finding.condition);
    judged.condition = finding.condition;
    if (finding.state == Compliance::complied) {
        ++judged.complied;
        return;
    }
    ++(finding.state == Compliance::breached ? judged.breached : judged.cannot_tell);
    judged.failed.push_back(finding);
}

std::vector<ConditionJudged> JudgedConditions::list() && {
    for (auto& judged : all_)
        add_reasons(judged);
    return std::move(all_);
}

}  // namespace spoilbook
