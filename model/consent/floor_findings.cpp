// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "model/consent/findings.h"
#include "model/consent/floor_ends.h"

namespace spoilbook {

std::vector<Finding> floor_findings(const Ledger& ledger, const Condition& condition,
                                    const JudgedSpan& span) {
    const auto quantity = quantity_from(condition, ledger.season().zone);
    std::vector<Finding> findings;
    if (!quantity || !span.period) return findings;
    const Period upto{span.period->from, std::min(span.period->to, span.as_at + 1)};
    for (auto& floor : floors_ended(ledger, condition, *quantity, upto, span.as_at)) {
        if (!in_force(condition, floor.state.as_at)) continue;
        Finding finding;
        finding.condition = &condition;
        finding.consent = floor.state.consent;
        finding.at = floor.state.as_at;
        finding.state = floor.judged;
        finding.window = floor.member.empty() ? floor.window : floor.window + ", " + floor.member;
        finding.why = std::move(floor.why);
        findings.push_back(std::move(finding));
    }
    return findings;
}

}  // namespace spoilbook
