// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/finding.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

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
    if (survey != nullptr) return place + " by survey " + survey->survey;
    return load == nullptr ? window : "load " + load->load;
}

bool judges_releases(const json& body) {
    return activity_of(body) != "dredge";
}

bool judges_dredging(const json& body) {
    return activity_of(body) != "release";
}

AppliesTo::AppliesTo(const Season& season, const json& body, bool not_known_is_in)
    : season_(season),
      scope_(scope_from(body)),
      of_releases_(scope_of(body, Activity::release), season, not_known_is_in),
      // A load dredged has not been anywhere yet: grounds and cells are not looked at.
      of_dredging_(scope_of(body, Activity::dredge), season, not_known_is_in),
      may_be_of_releases_(scope_of(body, Activity::release), season, true),
      may_be_of_dredging_(scope_of(body, Activity::dredge), season, true) {}

bool AppliesTo::operator()(const LedgerLine& line) const {
    return (line.release == nullptr ? of_dredging_ : of_releases_).takes_any_of(line);
}

std::string AppliesTo::not_recorded(const LedgerLine& line) const {
    const bool is_release = line.release != nullptr;
    if ((*this)(line) || !(is_release ? may_be_of_releases_ : may_be_of_dredging_).takes_any_of(line))
        return "";
    std::vector<std::string> all;
    const auto look = [&](const char* what, std::vector<std::string> Scope::*names) {
        Scope alone;
        alone.activity = is_release ? Activity::release : Activity::dredge;
        alone.*names = scope_.*names;
        if (!ScopeFilter(alone, season_).takes_any_of(line)) all.emplace_back(what);
    };
    look("ground", &Scope::grounds);
    look("cell", &Scope::cells);
    look("material", &Scope::materials);
    look("claim", &Scope::claims);
    look("class", &Scope::classes);
    look("barge or tug", &Scope::plant);
    return fmt::format("{}", fmt::join(all, ", "));
}

bool put_in_doubt(Finding& found, const std::string& not_recorded) {
    if (not_recorded.empty()) return true;
    if (found.state == Compliance::complied) return false;
    found.state = Compliance::cannot_tell;
    found.why = fmt::format("not recorded: {}; if the condition is about it: {}", not_recorded, found.why);
    return true;
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

std::vector<JudgedLine> judged_lines(const Ledger& ledger, const std::vector<LedgerLine>& lines,
                                     const Condition& condition, const json& body, const JudgedSpan& span) {
    std::vector<JudgedLine> judged;
    const AppliesTo applies(ledger.season(), body);
    for (const auto& line : lines) {
        if (!span.has(line.at) || !in_force(condition, line.at)) continue;
        const bool is_sure = applies(line);
        auto not_recorded = is_sure ? std::string() : applies.not_recorded(line);
        if (is_sure || !not_recorded.empty()) judged.push_back({&line, std::move(not_recorded)});
    }
    return judged;
}

}  // namespace spoilbook
