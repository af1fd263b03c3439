// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/finding.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "model/consent/limit.h"

namespace spoilbook {

namespace {

using nlohmann::json;

std::string activity_of(const json& body) {
    return body.contains("applies") ? body.at("applies").value("activity", "both") : "both";
}

Scope scope_of(const json& body, Activity activity) {
    Scope scope = scope_from(body);
    scope.activity = activity;
    return scope;
}

}  // namespace

std::string_view text(Compliance compliance) {
    switch (compliance) {
        case Compliance::complied:
            return "complied";
        case Compliance::breached:
            return "breached";
        case Compliance::cannot_tell:
            break;
    }
    return "cannot_tell";
}

std::string Finding::named() const {
    if (release != nullptr) return release->named();
    if (trip != nullptr) return "trip " + trip->trip;
    return load == nullptr ? window : "load " + load->load;
}

bool judges_releases(const json& body) {
    return activity_of(body) != "dredge";
}

bool judges_dredging(const json& body) {
    return activity_of(body) != "release";
}

AppliesTo::AppliesTo(const Season& season, const json& body, bool not_known_is_in)
    : of_releases_(scope_of(body, Activity::release), season, not_known_is_in),
      // A load dredged has not been anywhere yet: grounds and cells are not looked at.
      of_dredging_(scope_of(body, Activity::dredge), season, not_known_is_in) {}

bool AppliesTo::operator()(const LedgerLine& line) const {
    return (line.release == nullptr ? of_dredging_ : of_releases_).takes_any_of(line);
}

bool applies_to(const Ledger& ledger, const LedgerLine& line, const json& body, bool not_known_is_in) {
    return AppliesTo(ledger.season(), body, not_known_is_in)(line);
}

json body_of(const Condition& condition) {
    return json::parse(condition.body.empty() ? "{}" : condition.body, nullptr, false);
}

Finding finding_on(const Ledger& ledger, const Condition& condition, const LedgerLine& line) {
    Finding found;
    found.condition = &condition;
    found.consent = ledger.season().consents.find(condition.consent);
    found.release = line.release;
    found.trip = line.release == nullptr ? nullptr : line.release->trip;
    found.load = line.load;
    found.at = line.at;
    return found;
}

std::vector<const LedgerLine*> judged_lines(const Ledger& ledger, const std::vector<LedgerLine>& lines,
                                            const Condition& condition, const json& body,
                                            const JudgedSpan& span) {
    std::vector<const LedgerLine*> judged;
    const AppliesTo applies(ledger.season(), body);
    for (const auto& line : lines) {
        if (span.has(line.at) && in_force(condition, line.at) && applies(line)) judged.push_back(&line);
    }
    return judged;
}

}  // namespace spoilbook
