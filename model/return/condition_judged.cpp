// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/return/condition_judged.h"

#include <fmt/format.h>

#include <algorithm>

namespace spoilbook {

JudgedConditions::Gathered& JudgedConditions::gathered(const Condition& condition) {
    const auto same = [&](const Gathered& one) {
        const Condition& known = *one.judged.condition;
        return known.consent == condition.consent && known.condition == condition.condition;
    };
    const auto found = std::find_if(all_.begin(), all_.end(), same);
    if (found != all_.end()) return *found;
    all_.emplace_back();
    return all_.back();
}

void JudgedConditions::add(const Finding& finding) {
    auto& [judged, untold] = gathered(*finding.condition);
    judged.condition = finding.condition;
    switch (finding.state) {
        case Compliance::complied:
            ++judged.complied;
            return;
        case Compliance::breached:
            ++judged.breached;
            judged.reasons.push_back(fmt::format("condition {}, {}: {}", finding.condition->condition,
                                                 finding.named(), finding.why));
            return;
        case Compliance::cannot_tell:
            break;
    }
    ++judged.cannot_tell;
    auto same =
        std::find_if(untold.begin(), untold.end(), [&](const Untold& one) { return one.why == finding.why; });
    if (same == untold.end()) same = untold.insert(untold.end(), {finding.why, finding.named(), 0});
    ++same->times;
}

std::vector<ConditionJudged> JudgedConditions::list() && {
    std::vector<ConditionJudged> list;
    for (auto& [judged, untold] : all_) {
        for (const auto& one : untold) {
            const auto others = one.times == 1 ? "" : fmt::format(" and {} more", one.times - 1);
            judged.reasons.push_back(fmt::format("condition {}: it cannot be told of {}{} ({})",
                                                 judged.condition->condition, one.first, others, one.why));
        }
        list.push_back(std::move(judged));
    }
    return list;
}

}  // namespace spoilbook
