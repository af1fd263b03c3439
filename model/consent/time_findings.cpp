// SPDX-License-Identifier: GPL-3.0-or-later
#include <map>
#include <nlohmann/json.hpp>

#include "model/consent/findings.h"
#include "model/consent/sun_site.h"
#include "model/consent/time_state.h"

namespace spoilbook {

namespace {

/// One act between two instants, either of which may not be recorded.
struct Act {
    std::optional<Instant> from, to;
    bool whole = false;  ///< it went on all the time between
};

void judge(const TimeRule& rule, HoldTurns& turns, const Act& act, Finding& found) {
    const TimeSite& by = turns.by();
    std::vector<Instant> moments;
    if (act.from) moments.push_back(*act.from);
    if (act.whole && act.from && act.to) {
        for (const auto turn : turns.between(*act.from, *act.to))
            moments.push_back(turn);
    }
    if (act.to) moments.push_back(*act.to);
    if (!act.from || !act.to) found.why = "its start and end are not both recorded";
    for (const auto moment : moments) {
        const auto held = hold_state(rule, by, moment);
        if (held == true) {
            found.state = Compliance::breached;
            found.why = "not at this time";
            return;
        }
        if (!held && found.why.empty()) found.why = what_is_missing(rule, by, moment);
    }
    if (found.why.empty()) found.state = Compliance::complied;
}

Act act_of(const LedgerLine& line) {
    if (line.release != nullptr) return {line.release->opened, line.release->ended, true};
    return {line.load->loading_start, line.load->loading_end, false};
}

}  // namespace

std::vector<Finding> time_findings(const Ledger& ledger, const Condition& condition, const JudgedSpan& span) {
    const auto body = body_of(condition);
    const auto rule = body.is_object() ? time_rule_from(body) : Checked<TimeRule>(Refusal{});
    if (!rule) return {};
    const Season& season = ledger.season();
    const TideLevels tide(season.tides);
    std::map<Id, HoldTurns> turns_at;  // a ground's middle is dear to find
    const auto turns_of = [&](const Id& ground) -> HoldTurns& {
        const Id site = rule->by_day ? ground : Id{};
        const auto known = turns_at.find(site);
        if (known != turns_at.end()) return known->second;
        const auto at = rule->by_day ? sun_site(ledger, ground) : std::nullopt;
        return turns_at.emplace(site, HoldTurns(*rule, {season.zone, at, tide})).first->second;
    };
    std::vector<Finding> findings;
    const auto judge_all = [&](const std::vector<LedgerLine>& lines) {
        const auto judged = judged_lines(ledger, lines, condition, body, span);
        findings.reserve(findings.size() + judged.size());
        for (const auto& [line, not_recorded] : judged) {
            Finding found = finding_on(ledger, condition, *line);
            judge(*rule, turns_of(line->ground), act_of(*line), found);
            if (put_in_doubt(found, not_recorded)) findings.push_back(std::move(found));
        }
    };
    if (judges_releases(body)) judge_all(ledger.released());
    if (judges_dredging(body)) judge_all(ledger.dredged());
    return findings;
}

}  // namespace spoilbook
