// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/return/judge_releases.h"

#include <nlohmann/json.hpp>
#include <unordered_map>

#include "model/answer/place_findings.h"
#include "model/consent/findings.h"

namespace spoilbook {

namespace {

void judge_places(const Ledger& ledger, const std::vector<ScheduleLine>& schedule, TripTracks* tracks,
                  JudgedConditions& judged) {
    std::unordered_map<const ReleaseView*, const LedgerLine*> lines;
    for (const auto& line : ledger.released())
        lines.emplace(line.release, &line);
    for (const auto& line : schedule) {
        const auto* track = tracks == nullptr ? nullptr : tracks->of(*line.release->trip);
        for (const auto& found : place_findings(ledger, *lines.at(line.release), line.place, track))
            judged.add(found.finding);
    }
}

}  // namespace

bool has_judge(const Condition& condition) {
    const auto body = body_of(condition);
    if (!body.is_object()) return false;
    if (condition.kind == "place")
        return judges_releases(body) && (body.contains("inside") || body.contains("outside"));
    if (condition.kind == "series") return body.value("variable", "") != "turbidity";
    return condition.kind == "time";
}

void judge_releases(const Ledger& ledger, const ReturnAsk& ask, const ReturnFacts& facts,
                    JudgedConditions& judged) {
    judge_places(ledger, facts.schedule, ask.tracks, judged);
    const JudgedSpan span{ask.as_at, facts.period};
    for (const auto& condition : ledger.season().conditions.rows()) {
        if (condition.kind == "place" || !has_judge(condition)) continue;
        const auto found = condition.kind == "time" ? time_findings(ledger, condition, span)
                                                    : sea_findings(ledger, condition, span);
        for (const auto& finding : found)
            judged.add(finding);
    }
}

}  // namespace spoilbook
