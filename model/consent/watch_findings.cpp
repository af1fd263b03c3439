// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "model/consent/findings.h"
#include "model/consent/watch_rule.h"

namespace spoilbook {

namespace {

/// Those of a trip that began by then.
std::vector<const Watch*> begun_by(const std::unordered_map<Id, std::vector<const Watch*>>& watches,
                                   const Id& trip, Instant at) {
    const auto own = watches.find(trip);
    if (own == watches.end()) return {};
    auto begun = own->second;
    std::erase_if(begun, [at](const Watch* watch) { return *watch->start > at; });
    return begun;
}

void put(Finding& found, Compliance state, std::string why) {
    found.state = state;
    found.why = std::move(why);
}

void judge(const WatchRule& rule, const std::vector<const Watch*>& watches, Instant opened, Finding& found) {
    if (watches.empty()) {
        const Compliance state = rule.log ? Compliance::breached : Compliance::cannot_tell;
        return put(found, state, "no watch before the doors opened is on record");
    }
    const auto kept = kept_before(watches, opened);
    if (!kept) return put(found, Compliance::breached, "the watch on record ended before the doors opened");
    if (*kept < rule.before_ms) {
        return put(found, Compliance::breached,
                   fmt::format("the watch began {:.0f} min before the doors opened, not {:.0f}",
                               std::floor(static_cast<double>(*kept) / ms_per_minute),
                               static_cast<double>(rule.before_ms) / ms_per_minute));
    }
    found.state = Compliance::complied;
    for (const auto& sighting : sightings_against(rule, watches, opened)) {
        if (!sighting.certain) {
            if (found.state == Compliance::complied)
                put(found, Compliance::cannot_tell, "how far off it was seen is not recorded");
            continue;
        }
        return put(found, Compliance::breached,
                   sighting.watch->cleared ? "the water was not clear for long enough before the doors opened"
                                           : "what was seen is not recorded as cleared");
    }
}

}  // namespace

std::vector<Finding> watch_findings(const Ledger& ledger, const Condition& condition, const JudgedSpan& span,
                                    const std::vector<Watch>& watches) {
    const auto body = body_of(condition);
    if (!body.is_object() || !judges_releases(body)) return {};
    const WatchRule rule = watch_rule_from(body);
    const auto by_trip = watches_by_trip(watches);
    const auto judged = judged_lines(ledger, ledger.released(), condition, body, span);
    std::vector<Finding> findings;
    findings.reserve(judged.size());
    for (const auto& [line, not_recorded] : judged) {
        Finding found = finding_on(ledger, condition, *line);
        const auto opened = line->release->opened;
        if (opened)
            judge(rule, begun_by(by_trip, line->release->trip->id, *opened), *opened, found);
        else
            found.why = "when the doors opened is not recorded";
        if (put_in_doubt(found, not_recorded)) findings.push_back(std::move(found));
    }
    return findings;
}

}  // namespace spoilbook
