// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <memory>

#include "model/answer/instruments.h"
#include "model/record/season.h"
#include "model/turbidity/site_statistic.h"
#include "model/turbidity/trigger.h"

namespace spoilbook {

/// One condition of kind series on turbidity, in all its versions (same consent, same number).
struct TriggerCondition {
    const Consent* consent = nullptr;  ///< null where the condition names none
    std::string number;
    Trigger trigger;
};

/// One passed trigger with what is due for it.
struct TriggerRecord {
    const TriggerCondition* of = nullptr;
    TriggerEvent event;
    std::vector<Response> responses;  ///< to its tier
    std::optional<Instant> due;       ///< the earliest of the responses' own; nothing where none has a time
    [[nodiscard]] const SeriesVersion& version() const { return of->trigger.versions[event.version]; }
};

/// Until when one of a record's responses is to be given: its time from the event's start on, working days as
/// the consent counts them; nothing where it has no time.
std::optional<Instant> due_of(const TriggerRecord& record, const Response& response, const Zone& zone);

/// Where one site stands under one condition at the as-at.
struct TriggerState {
    const TriggerCondition* of = nullptr;
    SiteStanding standing;
    std::optional<TriggerRecord> open;
};

/// Good readings of one local month over what the site's interval would give.
struct MonthComplete {
    std::string month;         ///< YYYY-MM
    std::size_t readings = 0;  ///< rows, missing ones too
    std::size_t counted = 0;   ///< flag 1 or 2
    std::size_t expired = 0;   ///< counted, but of a calibration that had expired
    double expected = 0;       ///< from the first reading, the month's start or both, to its end or the as-at
    [[nodiscard]] std::optional<double> share() const {
        return expected > 0 ? std::optional(static_cast<double>(counted) / expected) : std::nullopt;
    }
};

/// Turbidity as a book knows it at one instant: reads and checks each site's readings once, when first asked
/// for. Of all that the book knows only what had happened by `as_at` counts. Book and season must outlive it.
class TurbidityWatch {
 public:
    TurbidityWatch(const Book& book, const Season& season, Instant as_at);

    [[nodiscard]] const std::vector<Site>& sites() const { return sites_; }
    /// Null where there is no such site.
    [[nodiscard]] const Site* site(const std::string& name) const;
    /// A site's readings, checked; null where there is no such site.
    const SiteSeries* series(const std::string& name);
    /// In the order of the book. Those whose members do not read are in `unread`.
    [[nodiscard]] const std::vector<TriggerCondition>& conditions() const { return conditions_; }
    [[nodiscard]] const Refusals& unread() const { return unread_; }
    /// The first condition that names the site as impact or control; null where none does.
    [[nodiscard]] const TriggerCondition* naming(const std::string& name) const;

    /// Events at one site under every condition that watches it, in order of start.
    std::vector<TriggerRecord> events(const std::string& name);
    /// Every condition at every site that it watches: what a board or a release check asks.
    std::vector<TriggerState> states();
    std::vector<MonthComplete> months(const std::string& name);
    /// The instruments of a site; empty where there is no such site.
    const std::vector<Instrument>& instruments(const std::string& name);
    /// Whether a reading at that instant counts with a calibration that had expired. Beside its flag, which
    /// it never changes.
    bool expired(const std::string& name, Instant at);
    /// The overrules of a site, in the order of the book.
    std::vector<Overrule> overrules(const std::string& name) const;
    /// Readings of a site in [from, to) that were over the level of a condition, each as its interval, hours.
    double hours_over(const TriggerCondition& condition, const std::string& name, const Period& period);

 private:
    TriggerOutcome outcome(const TriggerCondition& condition);
    [[nodiscard]] TriggerRecord record(const TriggerCondition& condition, const TriggerEvent& event) const;
    void read_conditions();
    void add_version(const Condition& condition);

    const Book& book_;
    const Season& season_;
    Instant as_at_;
    std::vector<Site> sites_;
    std::map<std::string, std::unique_ptr<SiteSeries>> series_;
    std::map<std::string, std::vector<Instrument>> instruments_;  ///< by site, when first asked for
    std::vector<TriggerCondition> conditions_;
    std::map<const TriggerCondition*, TriggerOutcome> outcomes_;
    Refusals unread_;
};

/// When the work goes on by the as-at that a condition on `activity` watches, in any order: for dredge the
/// time on the spuds and of loading, for release the doors, else both. What has no end yet goes on at the
/// as-at.
std::vector<Period> work_periods(const Season& season, Instant as_at, const std::string& activity);

/// True where an open event's response stops releases: what a release check holds for. Events whose response
/// is to tell, check, slow or move hold nothing.
bool holds_releases(const TriggerRecord& record);

}  // namespace spoilbook
