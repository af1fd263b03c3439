// SPDX-License-Identifier: GPL-3.0-or-later
// Series and duties: what is passed is an event, or a time that a thing was due.
#include <algorithm>
#include <nlohmann/json.hpp>

#include "model/answer/try_parts.h"
#include "model/answer/turbidity.h"
#include "model/consent/duty_calendar.h"
#include "model/consent/findings.h"
#include "model/unit/time_text.h"

namespace spoilbook::trial {

namespace {

std::size_t readings_in(const SiteSeries& series, Instant from, Instant to) {
    const auto in = [&](const LoggerReading& reading) { return from <= reading.time && reading.time <= to; };
    return static_cast<std::size_t>(std::count_if(series.readings.begin(), series.readings.end(), in));
}

/// The season with the candidate in place of all its conditions.
Season with_only(const Season& season, const Condition& candidate) {
    Season alone = season;
    alone.conditions = {};
    alone.conditions.add(candidate);
    return alone;
}

Trial of_turbidity(const Asked& asked) {
    if (asked.sources.book == nullptr) return cannot("the readings are not at hand");
    const Season alone = with_only(asked.ledger.season(), asked.candidate);
    TurbidityWatch watch(*asked.sources.book, alone, asked.to);
    if (!watch.unread().empty() || watch.conditions().empty()) return cannot("its members do not read");
    Trial trial;
    trial.of = "readings";
    for (const auto& site : watch.conditions().front().trigger.sites) {
        const SiteSeries* series = watch.series(site);
        if (series == nullptr) return cannot("there is no site " + site);
        for (const auto& event : watch.events(site)) {
            if (!asked.holds(event.event.start)) continue;
            TrialPass pass;
            pass.at = event.event.start;
            pass.what = site;
            pass.value = event.event.peak;
            pass.why = event.event.end ? "clear again " + instant_text(*event.event.end, alone.zone)
                                       : std::string("not clear again by then");
            trial.passes.push_back(std::move(pass));
        }
        trial.looked_at += readings_in(*series, asked.from, asked.to);
    }
    std::stable_sort(trial.passes.begin(), trial.passes.end(),
                     [](const TrialPass& a, const TrialPass& b) { return a.at < b.at; });
    trial.times = trial.passes.size();
    return trial;
}

}  // namespace

Trial of_series(const Asked& asked) {
    const auto body = nlohmann::json::parse(asked.candidate.body);
    const std::string variable = body.value("variable", "");
    if (variable == "turbidity") return of_turbidity(asked);
    if (!series_rule_from(asked.candidate, asked.ledger.season().zone))
        return cannot("its members do not read");
    const bool loads = judges_dredging(body);
    return of_findings(sea_findings(asked.ledger, asked.candidate, asked.span()), !loads ? "releases"
                                                                                  : judges_releases(body)
                                                                                      ? "loads and releases"
                                                                                      : "loads");
}

Trial of_duty(const Asked& asked) {
    Refusals unread;
    // The calendar knows only conditions of its season, and all of one number by each other.
    const Season alone = with_only(asked.ledger.season(), asked.candidate);
    const Ledger ledger(alone);
    const auto times = duty_times(ledger, asked.candidate, asked.to, &unread);
    if (!unread.empty()) return cannot("its members do not read");
    const Zone& zone = asked.ledger.season().zone;
    Trial trial;
    trial.of = "times that it would have been due";
    for (const auto& time : times) {
        if (!time.arises || !asked.holds(*time.arises)) continue;
        if (time.state == DutyState::nil) continue;
        ++trial.looked_at;
        if (time.unknown > 0) ++trial.cannot_tell;
        if (time.state != DutyState::overdue && !time.late()) continue;
        TrialPass pass;
        pass.at = time.due.value_or(*time.arises);
        pass.what = time.covers ? "of " + instant_text(time.covers->from, zone) : std::string("on its date");
        pass.level = time.step;
        pass.why = time.late() ? "done late" : "no record that it was done";
        trial.passes.push_back(std::move(pass));
    }
    trial.times = trial.passes.size();
    return trial;
}

}  // namespace spoilbook::trial
