// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/return/places_judged.h"

#include <nlohmann/json.hpp>
#include <unordered_map>

namespace spoilbook {

bool has_judge(const Condition& condition) {
    if (condition.kind != "place") return false;
    const auto body = nlohmann::json::parse(condition.body.empty() ? "{}" : condition.body, nullptr, false);
    const bool of_dredging =
        body.contains("applies") && body.at("applies").value("activity", "both") == "dredge";
    return body.is_object() && (body.contains("inside") || body.contains("outside")) && !of_dredging;
}

void judge_places(const Ledger& ledger, const std::vector<ScheduleLine>& schedule, TripTracks* tracks,
                  JudgedConditions& judged) {
    std::unordered_map<const ReleaseView*, const LedgerLine*> lines;
    for (const auto& line : ledger.released())
        lines.emplace(line.release, &line);
    for (const auto& line : schedule) {
        const auto* track = tracks == nullptr ? nullptr : tracks->of(*line.release->trip);
        const LedgerLine& ledger_line = *lines.at(line.release);
        for (const auto& found : place_findings(ledger, ledger_line, line.place, track))
            judged.add(*found.condition, found.finding, line.release->named(), found.why);
    }
}

}  // namespace spoilbook
