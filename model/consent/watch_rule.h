// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <unordered_map>
#include <vector>

#include "model/record/trip.h"

namespace spoilbook {

/// A condition of kind watch, read from its JSON.
struct WatchRule {
    std::int64_t before_ms = 0;  ///< the watch goes on for so long before the doors open
    std::optional<double> radius_m;
    std::int64_t clear_ms = 0;  ///< the water must have been clear for so long
    bool log = false;           ///< it must be on record
};

WatchRule watch_rule_from(const nlohmann::json& body);

/// A sighting that stands against doors opening at `at`.
struct Sighting {
    const Watch* watch = nullptr;
    std::optional<Instant> clear_from;  ///< when it no longer does; nothing: not cleared, or not known
    bool certain = true;                ///< false: its distance is not recorded
};

/// The watches of each trip, in order of their start. Rows without a start are left out.
std::unordered_map<Id, std::vector<const Watch*>> watches_by_trip(const std::vector<Watch>& rows);

/// How long before `at` a watch was kept without a break until then, ms; nothing where none was. Watches in
/// order of their start may follow each other; one without an end went on.
std::optional<std::int64_t> kept_before(const std::vector<const Watch*>& watches, Instant at);

/// The sightings inside the radius in rows that began before `at` and are not cleared by then; something was
/// seen where a species, a number other than 0 or a distance is recorded, or `seen` alone says so.
std::vector<Sighting> sightings_against(const WatchRule& rule, const std::vector<const Watch*>& watches,
                                        Instant at);

}  // namespace spoilbook
