// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/not_recorded.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "model/consent/finding.h"
#include "model/consent/limit.h"

namespace spoilbook {

namespace {

bool lacks_material(const LedgerLine& line, const Season& season) {
    return season.materials.find(line.load->material) == nullptr;
}

bool lacks_claim(const LedgerLine& line, const Season& season) {
    return line.figures != nullptr &&
           std::any_of(line.figures->parts.begin(), line.figures->parts.end(),
                       [&](const LoadPart& part) { return season.claims.find(part.claim) == nullptr; });
}

}  // namespace

std::vector<NotRecorded> not_recorded_of_load(const Ledger& ledger, const LedgerLine& line) {
    const Season& season = ledger.season();
    std::vector<NotRecorded> all;
    if (line.load == nullptr) return all;
    NotRecorded material{"material", {}}, claim{"claim", {}};
    const bool no_material = lacks_material(line, season), no_claim = lacks_claim(line, season);
    if (!no_material && !no_claim) return all;
    for (const auto& condition : season.conditions.rows()) {
        const auto body = body_of(condition);
        if (!body.is_object() || !in_force(condition, line.at)) continue;
        const Scope scope = scope_from(body);
        const std::string each = body.value("each_of", "none");
        const bool of_material = no_material && (!scope.materials.empty() || each == "material");
        const bool of_claim =
            no_claim && (!scope.claims.empty() || !scope.classes.empty() || each == "claim");
        if ((!of_material && !of_claim) || !ScopeFilter(scope, season, true).takes_any_of(line)) continue;
        if (of_material) material.asked_by.push_back(&condition);
        if (of_claim) claim.asked_by.push_back(&condition);
    }
    for (auto* one : {&material, &claim}) {
        if (!one->asked_by.empty()) all.push_back(std::move(*one));
    }
    return all;
}

}  // namespace spoilbook
