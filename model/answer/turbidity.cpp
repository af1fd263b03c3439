// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/turbidity.h"

#include <algorithm>
#include <set>

#include "model/answer/checked_site.h"
#include "model/record/reading.h"
#include "model/record/release_view.h"
#include "model/record/working_days.h"
#include "model/turbidity/site_watch.h"
#include "model/unit/among.h"
#include "model/unit/calendar.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

void add_site(std::vector<std::string>& sites, const std::string& site) {
    if (!is_among(sites, site)) sites.push_back(site);
}

}  // namespace

std::optional<Instant> due_of(const TriggerRecord& record, const Response& response, const Zone& zone) {
    if (!response.within) return std::nullopt;
    const Consent* consent = record.of->consent;
    const auto not_working = not_working_from(consent == nullptr ? "" : consent->not_working);
    return due_after(zone, record.event.start, response.within->n, response.within->unit, not_working);
}

TurbidityWatch::TurbidityWatch(const Book& book, const Season& season, Instant as_at)
    : book_(book), season_(season), as_at_(as_at) {
    for (const Row& row : book.rows(definition<Site>().kind()))
        sites_.push_back(definition<Site>().read(row));
    read_conditions();
}

const Site* TurbidityWatch::site(const std::string& name) const {
    const auto found =
        std::find_if(sites_.begin(), sites_.end(), [&](const Site& one) { return one.site == name; });
    return found == sites_.end() ? nullptr : &*found;
}

const SiteSeries* TurbidityWatch::series(const std::string& name) {
    const auto held = series_.find(name);
    if (held != series_.end()) return held->second.get();
    const Site* found = site(name);
    if (found == nullptr) return nullptr;
    auto checked = std::make_unique<SiteSeries>(checked_site(book_, *found, as_at_));
    return series_.emplace(name, std::move(checked)).first->second.get();
}

void TurbidityWatch::read_conditions() {
    for (const auto& condition : season_.conditions.rows()) {
        if (condition.kind == "series") add_version(condition);
    }
    for (auto& condition : conditions_) {
        auto& versions = condition.trigger.versions;
        std::stable_sort(versions.begin(), versions.end(), [](const auto& a, const auto& b) {
            return a.from < b.from;  // always in force comes first
        });
        for (const auto& version : versions) {
            for (const auto& name : version.rule.sites)
                add_site(condition.trigger.sites, name);
            if (!version.rule.sites.empty()) continue;
            for (const auto& one : sites_) {
                if (one.role != "control") add_site(condition.trigger.sites, one.site);
            }
        }
    }
}

void TurbidityWatch::add_version(const Condition& condition) {
    auto rule = series_rule_from(condition, season_.zone);
    if (!rule) {
        for (auto& refusal : rule.refusals())
            unread_.push_back(refusal);
        return;
    }
    if (rule->variable != "turbidity") return;
    const Consent* consent = season_.consents.find(condition.consent);
    auto found = std::find_if(conditions_.begin(), conditions_.end(), [&](const auto& one) {
        return one.consent == consent && one.number == condition.condition;
    });
    if (found == conditions_.end()) {
        conditions_.push_back({consent, condition.condition, {}});
        found = std::prev(conditions_.end());
    }
    found->trigger.versions.push_back({std::move(*rule), condition.from, condition.to, &condition});
}

const TriggerCondition* TurbidityWatch::naming(const std::string& name) const {
    for (const auto& condition : conditions_) {
        if (is_among(condition.trigger.sites, name)) return &condition;
        for (const auto& version : condition.trigger.versions) {
            if (version.rule.control == name) return &condition;
        }
    }
    return nullptr;
}

TriggerOutcome TurbidityWatch::outcome(const TriggerCondition& condition) {
    const auto held = outcomes_.find(&condition);
    if (held != outcomes_.end()) return held->second;
    const auto series_of = [this](const std::string& name) { return series(name); };
    const auto& activity = condition.trigger.versions.front().rule.activity;
    auto found = find_events(condition.trigger, series_of,
                             WorkingTime(work_periods(season_, as_at_, activity)), season_.zone);
    return outcomes_.emplace(&condition, std::move(found)).first->second;
}

TriggerRecord TurbidityWatch::record(const TriggerCondition& condition, const TriggerEvent& event) const {
    TriggerRecord record{&condition, event, {}, std::nullopt};
    const auto& rule = record.version().rule;
    for (const auto& response : rule.responses) {
        if (response.tier && response.tier != rule.tier) continue;
        record.responses.push_back(response);
        const auto due = due_of(record, response, season_.zone);
        if (due && (!record.due || *due < *record.due)) record.due = due;
    }
    return record;
}

std::vector<TriggerRecord> TurbidityWatch::events(const std::string& name) {
    std::vector<TriggerRecord> found;
    for (const auto& condition : conditions_) {
        if (!is_among(condition.trigger.sites, name)) continue;
        for (const auto& event : outcome(condition).events) {
            if (event.site == name) found.push_back(record(condition, event));
        }
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const auto& a, const auto& b) { return a.event.start < b.event.start; });
    return found;
}

std::vector<TriggerState> TurbidityWatch::states() {
    std::vector<TriggerState> states;
    for (const auto& condition : conditions_) {
        const auto found = outcome(condition);
        for (const auto& standing : found.sites) {
            TriggerState state{&condition, standing, std::nullopt};
            if (standing.open) state.open = record(condition, found.events[*standing.open]);
            states.push_back(std::move(state));
        }
    }
    return states;
}

std::vector<MonthComplete> TurbidityWatch::months(const std::string& name) {
    std::vector<MonthComplete> months;
    const SiteSeries* found = series(name);
    if (found == nullptr || found->readings.empty()) return months;
    Period month{Instant{0}, Instant{0}};
    for (std::size_t i = 0; i < found->readings.size(); ++i) {
        const Instant t = found->readings[i].time;
        while (!month.contains(t)) {
            // Months in which the logger was silent are months too.
            month = month_holding(season_.zone, months.empty() ? t : month.to);
            const Instant from = std::max(month.from, found->readings.front().time);
            const double minutes =
                static_cast<double>(std::min(month.to, as_at_) - from) / static_cast<double>(ms_per_minute);
            const double expected = found->interval_min > 0 ? minutes / found->interval_min : 0;
            months.push_back({month_text(season_.zone.day_of(month.from)), 0, 0, 0, expected});
        }
        ++months.back().readings;
        if (!counts(found->flags[i])) continue;
        ++months.back().counted;
        months.back().expired += expired(name, found->readings[i].time) ? 1 : 0;
    }
    return months;
}

const std::vector<Instrument>& TurbidityWatch::instruments(const std::string& name) {
    const auto held = instruments_.find(name);
    if (held != instruments_.end()) return held->second;
    const Site* found = site(name);
    auto read = found == nullptr ? std::vector<Instrument>() : instruments_at(book_, *found, as_at_);
    return instruments_.emplace(name, std::move(read)).first->second;
}

bool TurbidityWatch::expired(const std::string& name, Instant at) {
    return calibration_at(instruments(name), at) == CalibrationState::expired;
}

std::vector<Overrule> TurbidityWatch::overrules(const std::string& name) const {
    const Site* found = site(name);
    return found == nullptr ? std::vector<Overrule>() : overrule_rows_of(book_, *found);
}

double TurbidityWatch::hours_over(const TriggerCondition& condition, const std::string& name,
                                  const Period& period) {
    const SiteSeries* found = series(name);
    if (found == nullptr) return 0;
    const SeriesOf series_of = [this](const std::string& one) { return series(one); };
    SiteWatch watch(condition.trigger, name, series_of);
    const WorkingTime never({});  // whether the work goes on decides what passes, not what is over
    std::size_t over = 0;
    for (auto t = watch.next_time(); t && *t < period.to; t = watch.next_time()) {
        watch.step(never, season_.zone);
        over += period.contains(*t) && watch.standing().last.telling == Telling::over ? 1 : 0;
    }
    return static_cast<double>(over) * found->interval_min / 60;
}

std::vector<Period> work_periods(const Season& season, Instant as_at, const std::string& activity) {
    std::vector<Period> periods;
    const auto add = [&](const std::optional<Instant>& from, const std::optional<Instant>& to) {
        if (from && *from <= as_at) periods.push_back({*from, to ? *to : as_at + 1});
    };
    if (activity != "release") {
        for (const auto& load : season.loads.rows())
            add(load.loading_start, load.loading_end);
        for (const auto& station : season.stations.rows())
            add(station.spuds_down, station.spuds_up);
    }
    if (activity != "dredge") {
        for (const auto& release : releases_of(season))
            add(release.opened ? release.opened : release.ended, release.shut ? release.shut : release.ended);
    }
    return periods;
}

bool holds_releases(const TriggerRecord& record) {
    const auto& rule = record.version().rule;
    if (record.event.end || rule.activity == "dredge") return false;
    return std::any_of(record.responses.begin(), record.responses.end(),
                       [](const Response& response) { return response.action == "stop"; });
}

}  // namespace spoilbook
