// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/turbidity/level_judge.h"
#include "model/turbidity/working_time.h"

namespace spoilbook {

/// A condition of kind series as it reads in [from, to).
struct SeriesVersion {
    SeriesRule rule;
    std::optional<Instant> from, to;
    const Condition* condition = nullptr;

    [[nodiscard]] bool holds_at(Instant at) const { return (!from || *from <= at) && (!to || at < *to); }
};

/// One passed trigger at one site.
struct TriggerEvent {
    std::string site;
    std::size_t version = 0;     ///< of the condition, in force at `start`
    Instant over_since;          ///< the first reading over the level
    Instant start;               ///< the reading at which the trigger passed
    std::optional<Instant> end;  ///< the reading at which the all-clear was met; nothing: open
    double peak = 0;             ///< greatest statistic from over_since to the end that could be told
    Instant peak_at;
};

/// How one site stands after the last reading judged.
struct SiteStanding {
    std::string site;
    std::optional<Instant> at;  ///< that reading; nothing where none was judged
    Judged last;
    std::optional<Instant> over_since;   ///< a hold that runs
    std::optional<Instant> clear_since;  ///< since when no reading told over
    std::optional<std::size_t> open;     ///< place of its open event in `events`
};

struct TriggerOutcome {
    std::vector<TriggerEvent> events;  ///< in order of start
    std::vector<SiteStanding> sites;
};

/// All versions of one condition, and the names of the sites that any of them watches.
struct Trigger {
    std::vector<SeriesVersion> versions;  ///< of versions that overlap the last one holds
    std::vector<std::string> sites;
};

/// Finds the events of one trigger, site by site, reading by reading (docs/calculations.md, Turbidity):
/// - a reading is judged under the version in force at its time, at times of the site's present readings;
/// - held: over_since is the first reading over of an unbroken run; the event starts at the first reading
///   over with t − over_since ≥ held_hours. A reading not over, or of which nothing can be told, ends the
///   run; so does one while the condition does not watch (`while`).
/// - hours_in: each reading over counts its site's interval; the event starts at the first reading over with
///   that many hours in (t − days, t], days being taken off on the wall clock of `zone`;
/// - all-clear: clear_since is the first reading not over after the last one over; the event ends at the
///   first reading not over with t − clear_since ≥ the all-clear's hours, at the site itself, at all sites
///   or at those named. Cannot tell neither sets nor resets clear_since and never ends an event.
/// Series and trigger must outlive the call only.
TriggerOutcome find_events(const Trigger& trigger, const SeriesOf& series_of, const WorkingTime& working,
                           const Zone& zone);

}  // namespace spoilbook
