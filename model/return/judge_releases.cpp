// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/return/judge_releases.h"

#include <unordered_map>

#include "model/answer/place_findings.h"

namespace spoilbook {

namespace {

void judge_places(const Ledger& ledger, const std::vector<ScheduleLine>& schedule, TripTracks* tracks,
                  JudgedConditions& judged) {
    std::unordered_map<const ReleaseView*, const LedgerLine*> lines;
    for (const auto& line : ledger.released())
        lines.emplace(line.release, &line);
    const PlaceConditions conditions(ledger);
    for (const auto& line : schedule) {
        const auto* track = tracks == nullptr ? nullptr : tracks->of(*line.release->trip);
        for (const auto& found : conditions.judge(*lines.at(line.release), line.place, track))
            judged.add(found.finding);
    }
}

}  // namespace

void judge_releases(const Ledger& ledger, const ReturnAsk& ask, const ReturnFacts& facts,
                    BookRecords& records, JudgedConditions& judged) {
    judge_places(ledger, facts.schedule, ask.tracks, judged);
    const JudgedSpan span{ask.as_at, facts.period};
    for (const auto& condition : ledger.season().conditions.rows()) {
        for (const auto& finding : findings_of(ledger, condition, span, records))
            judged.add(finding);
    }
}

}  // namespace spoilbook
