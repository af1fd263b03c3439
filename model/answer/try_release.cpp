// SPDX-License-Identifier: GPL-3.0-or-later
// Place and time: each release is judged by itself.
#include <algorithm>
#include <map>
#include <nlohmann/json.hpp>

#include "model/answer/place_findings.h"
#include "model/answer/try_parts.h"
#include "model/consent/time_state.h"

namespace spoilbook::trial {

namespace {

using nlohmann::json;

/// Where sunrise and sunset are looked at: the middle of the line's ground, else of the first one.
class SunSites {
 public:
    explicit SunSites(const Ledger& ledger) : ledger_(ledger) {}

    std::optional<LonLat> of(const Id& ground) {
        const auto held = sites_.find(ground);
        return held != sites_.end() ? held->second : sites_.emplace(ground, find(ground)).first->second;
    }

 private:
    [[nodiscard]] std::optional<LonLat> find(const Id& id) const {
        const auto& map = ledger_.grounds();
        const Area* ground = map.open_ground(id);
        for (const auto& other : ledger_.season().grounds.rows()) {
            if (ground == nullptr) ground = map.open_ground(other.id);
        }
        if (ground == nullptr || ground->parts.empty() || !map.crs()) return std::nullopt;
        return map.crs()->unproject(farthest_inside(*ground));
    }

    const Ledger& ledger_;
    std::map<Id, std::optional<LonLat>> sites_;
};

/// From when to when the line went on; the later alone where the earlier is not recorded.
std::vector<Instant> ends_of(const LedgerLine& line) {
    const auto start = line.release != nullptr ? line.release->opened : line.load->loading_start;
    return start && *start < line.at ? std::vector{*start, line.at} : std::vector{line.at};
}

class TimeTrial {
 public:
    TimeTrial(const Asked& asked, const TimeRule& rule, const Scope& scope)
        : asked_(asked),
          rule_(rule),
          filter_(scope, asked.ledger.season()),
          tide_(asked.ledger.season().tides),
          sun_(asked.ledger) {}

    void take(const std::vector<LedgerLine>& lines) {
        for (const auto& line : lines) {
            if (asked_.holds(line.at) && takes(filter_, line)) judge(line);
        }
    }

    Trial end() {
        std::stable_sort(trial_.passes.begin(), trial_.passes.end(),
                         [](const TrialPass& a, const TrialPass& b) { return a.at < b.at; });
        trial_.times = trial_.passes.size();
        return std::move(trial_);
    }

    Trial trial_;

 private:
    void judge(const LedgerLine& line) {
        const Zone& zone = asked_.ledger.season().zone;
        const TimeSite by{zone, rule_.by_day ? sun_.of(line.ground) : std::nullopt, tide_};
        ++trial_.looked_at;
        bool unknown = false;
        for (const Instant at : ends_of(line)) {
            const auto held = hold_state(rule_, by, at);
            if (held && *held) return trial_.passes.push_back(pass_at(line, "not at this time"));
            unknown = unknown || !held;
        }
        if (unknown) ++trial_.cannot_tell;
    }

    const Asked& asked_;
    const TimeRule& rule_;
    ScopeFilter filter_;
    TideLevels tide_;
    SunSites sun_;
};

}  // namespace

Trial of_place(const Asked& asked) {
    Trial trial;
    trial.of = "releases";
    const auto places = release_places(asked.ledger, asked.to, asked.sources.tracks);
    std::map<const ReleaseView*, const ReleasePlace*> at;
    for (const auto& place : places)
        at.emplace(place.release, &place);
    for (const auto& line : asked.ledger.released()) {
        const auto place = at.find(line.release);
        if (!asked.holds(line.at) || place == at.end()) continue;
        const auto* track =
            asked.sources.tracks == nullptr ? nullptr : asked.sources.tracks->of(*line.release->trip);
        const auto found = place_finding(asked.ledger, asked.candidate, line, *place->second, track);
        if (!found) continue;
        ++trial.looked_at;
        if (found->finding.state == Compliance::cannot_tell) ++trial.cannot_tell;
        if (found->finding.state != Compliance::breached) continue;
        auto pass = pass_at(line, found->finding.why);
        pass.value = found->room_m;
        trial.passes.push_back(std::move(pass));
    }
    trial.times = trial.passes.size();
    return trial;
}

Trial of_time(const Asked& asked) {
    const json body = json::parse(asked.candidate.body);
    const auto rule = time_rule_from(body);
    if (!rule) {
        Trial trial;
        trial.why_not = "its times do not read";
        return trial;
    }
    const json applies = body.value("applies", json::object());
    const std::string activity = applies.value("activity", "both");
    const Scope scope = scope_from(body);
    TimeTrial trial(asked, *rule, scope);
    trial.trial_.of = activity == "both" ? "loads and releases" : activity == "dredge" ? "loads" : "releases";
    if (activity != "dredge") trial.take(asked.ledger.released());
    if (activity != "release") trial.take(asked.ledger.dredged());
    return trial.end();
}

}  // namespace spoilbook::trial
