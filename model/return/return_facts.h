// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <set>

#include "model/answer/event_answers.h"
#include "model/answer/release_places.h"
#include "model/answer/site_month.h"
#include "model/answer/volumes.h"
#include "model/consent/duty_calendar.h"
#include "model/consent/limit.h"
#include "model/return/condition_judged.h"

namespace spoilbook {

/// An amount as a return prints it: whole tenths of m³ (or t), so that totals are the sums of what is
/// printed.
struct Tenths {
    std::int64_t tenths = 0;

    [[nodiscard]] double value() const { return static_cast<double>(tenths) / 10; }
};

/// One release as the schedule prints it.
struct ScheduleLine {
    const ReleaseView* release = nullptr;
    ReleasePlace place;
    std::string claims;  ///< "FB1, FB2"
    std::string material, barge, tug, ground, cell;
    std::string method;  ///< how its volume is known; empty: it is not
    std::optional<Tenths> hopper_m3, in_situ_m3;
    std::int64_t entered_ms = 0;  ///< when its row came into the book, ms UTC
    bool imported = false;        ///< came with a book folder, not logged at a desk
    bool late = false;            ///< entered over 24 h after its release end
    std::vector<std::pair<std::string, Tenths>> in_situ_by_claim;  ///< sums to in_situ_m3
};

/// A total under one key: a claim, a ground, …
struct PrintedTotal {
    std::string key;  ///< empty: what has none
    std::size_t releases = 0;
    Tenths hopper_m3, in_situ_m3;
    std::size_t unknown = 0;
};

/// Something that must be mended before a return can be made.
struct Missing {
    std::string what;
    std::string where;
};

/// A factor version behind the volumes of a return.
struct FactorUsed {
    std::string name;
    double value = 0;
    double u = 0;                 ///< standard, 0 where none is recorded
    std::optional<Instant> from;  ///< blank: materials.csv, as the book began
    std::optional<Instant> accepted;
    bool waits = false;  ///< a revision that the authority had not accepted by the as-at
};

/// The most that one calendar day or week of the period used of a limit, in its measure's unit.
struct LargestUsed {
    double used = 0, used_u = 0;
    Instant from, to;  ///< that day or week, half-open
};

/// A condition that a return does not judge: to be answered beside it.
struct NotJudged {
    const Condition* condition = nullptr;
    std::string why;  ///< in words
};

/// All that a period's return says. Points into the ledger and season, which must outlive it.
struct ReturnFacts {
    const Season* season = nullptr;
    std::string period_name;  ///< 2025-11
    Period period;
    Instant as_at;      ///< nothing later counts
    Instant limits_at;  ///< the as-at, or the end of the period where that is earlier
    std::string journal_head;
    std::string made_by;
    int revision = 0;
    std::vector<Missing> missing;
    std::vector<ScheduleLine> schedule;
    VolumeRow totals;  ///< unrounded, with uncertainty
    PrintedTotal printed;
    std::vector<PrintedTotal> by_claim, by_ground, by_cell, by_material;
    std::vector<LimitState> limits;
    std::vector<std::optional<LargestUsed>> largest_used;  ///< beside limits, one each
    std::vector<bool> exceeded;  ///< beside limits, one each: at a release of the period, or at its end
    std::vector<const Event*> events;
    std::vector<EventAnswer> triggers;  ///< passed in the period, with their answers
    std::vector<SiteMonth> water;       ///< turbidity, a row a site
    /// Keeps what `triggers` points into.
    std::shared_ptr<TurbidityWatch> turbidity;
    std::vector<DutyTime> duties;  ///< arose, due or done in the period, or still open
    std::vector<FactorUsed> factors;
    std::optional<Amounts> reported;  ///< totals with accepted factors alone; nothing: both readings are one
    std::size_t late_entries = 0;     ///< logged at a desk over 24 h after the release end
    std::size_t imported_entries = 0;
    std::vector<ConditionJudged> judged;  ///< conditions held against each release, trip or load
    std::vector<NotJudged> not_judged;    ///< conditions in force in the period, and why not
    std::vector<std::string>
        reasons;  ///< why compliance cannot be stated; empty: all that is judged complied
};

/// What a return is asked for.
struct ReturnAsk {
    std::string period;  ///< YYYY-MM
    Instant as_at;
    std::string journal_head;
    std::string made_by;
    std::set<std::int64_t> import_stamps_ms;  ///< stamps of the journal's import entries
    TripTracks* tracks = nullptr;             ///< places releases that have no position of their own
};

/// Gathers a month's return, what is missing included. Refused where the period is not a month. Knows no
/// clock: the same ledger, as-at and head give the same facts. A month without a trip is a return too. Reads
/// what the season does not have (watches, which columns hold something, loggers) out of `book`, whose season
/// is the ledger's; both must outlive the answer.
Checked<ReturnFacts> gather_return(const Book& book, const Ledger& ledger, const ReturnAsk& ask);

/// What stands against making the return (docs/return.md): the period not over, releases without end, place,
/// ground or volume, trips without outcome, shifts not signed, events not answered.
std::vector<Missing> missing_in(const Ledger& ledger, const ReturnFacts& facts);

}  // namespace spoilbook
