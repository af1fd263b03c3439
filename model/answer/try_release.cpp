// SPDX-License-Identifier: GPL-3.0-or-later
// Place and time, where each release is judged by itself, and surface, where each survey is.
#include <map>
#include <nlohmann/json.hpp>

#include "model/answer/place_findings.h"
#include "model/answer/surface_findings.h"
#include "model/answer/try_parts.h"
#include "model/consent/findings.h"
#include "model/consent/surface_rule.h"
#include "model/consent/time_rule.h"

namespace spoilbook::trial {

using nlohmann::json;

Trial of_place(const Asked& asked) {
    Trial trial;
    trial.of = "releases";
    const auto places = release_places(asked.ledger, asked.to, asked.sources.tracks);
    std::map<const ReleaseView*, const ReleasePlace*> at;
    for (const auto& place : places)
        at.emplace(place.release, &place);
    const PlaceConditions candidate(asked.ledger, asked.candidate);
    for (const auto& line : asked.ledger.released()) {
        const auto place = at.find(line.release);
        if (!asked.holds(line.at) || place == at.end()) continue;
        const auto* track =
            asked.sources.tracks == nullptr ? nullptr : asked.sources.tracks->of(*line.release->trip);
        for (const auto& found : candidate.judge(line, *place->second, track)) {
            ++trial.looked_at;
            if (found.finding.state == Compliance::cannot_tell) note_untold(trial, found.finding);
            if (found.finding.state != Compliance::breached) continue;
            auto pass = pass_at(line, found.finding.why);
            pass.value = found.room_m;
            trial.passes.push_back(std::move(pass));
        }
    }
    trial.times = trial.passes.size();
    return trial;
}

Trial of_time(const Asked& asked) {
    const json body = json::parse(asked.candidate.body);
    if (!time_rule_from(body)) return cannot("its times do not read");
    const bool releases = judges_releases(body);
    const bool loads = judges_dredging(body);
    return of_findings(time_findings(asked.ledger, asked.candidate, asked.span()), releases && loads
                                                                                       ? "loads and releases"
                                                                                   : loads ? "loads"
                                                                                           : "releases");
}

Trial of_surface(const Asked& asked) {
    if (asked.sources.book == nullptr) return cannot("the grids of surveys are in the book alone");
    const auto rule = surface_rule_from(json::parse(asked.candidate.body));
    if (!rule) return cannot(no_bound);
    if (auto missing = survey_not_there(asked.ledger.season(), *rule); !missing.empty())
        return cannot(std::move(missing));
    SurveyBeds beds(*asked.sources.book);
    auto found = surface_findings(asked.ledger.season(), asked.candidate, asked.span(), beds);
    std::erase_if(found, [&](const Finding& one) { return one.at < asked.from; });
    return of_findings(found, "surveyed places");
}

}  // namespace spoilbook::trial
