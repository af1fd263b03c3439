// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <set>

#include "model/consent/not_recorded.h"
#include "model/return/condition_named.h"
#include "model/return/return_facts.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

class MissingList {
 public:
    MissingList(const Ledger& ledger, const ReturnFacts& facts)
        : ledger_(ledger), season_(ledger.season()), facts_(facts) {}

    std::vector<Missing> find() {
        if (facts_.as_at < facts_.period.to)
            say("the period is not over at the as-at of this return", "period " + facts_.period_name);
        trips();
        for (const auto& line : facts_.schedule)
            release(line);
        loads();
        shifts();
        events();
        triggers();
        return std::move(missing_);
    }

 private:
    void say(std::string what, std::string where) { missing_.push_back({std::move(what), std::move(where)}); }

    [[nodiscard]] bool in_period(std::optional<Instant> at) const {
        return at && facts_.period.contains(*at) && *at <= facts_.as_at;
    }

    /// Trips of the period that have neither released with a time nor said what became of the load.
    void trips() {
        std::set<Id> released;
        for (const auto& release : ledger_.all_releases()) {
            released.insert(release.trip->id);
            const auto began = release.opened ? release.opened : release.trip->departed;
            if (!release.ended && release.counts && in_period(began))
                say("the release has no end", release.named());
        }
        for (const auto& trip : season_.trips.rows()) {
            const bool told = released.contains(trip.id) || !trip.outcome.empty();
            if (!told && in_period(trip.departed))
                say("neither a release nor an outcome is logged", "trip " + trip.trip);
        }
    }

    void release(const ScheduleLine& line) {
        const std::string where = line.release->named();
        const bool declared = line.release->position_from == "declared";
        if (!line.place.distance_m && line.place.why.starts_with("no position") && !declared) {
            say("the release has no position",
                where + ": log it from a named record with its uncertainty, or declare it not recorded");
        }
        if (!line.release->ground) say("the release names no ground", where);
        if (line.release->load == nullptr)
            say("the trip names no load", where);
        else if (!line.in_situ_m3)
            say("no method gives the load's in-situ volume", "load " + line.release->load->load);
    }

    /// What conditions ask for to know whether they are about a load, once a load.
    void loads() {
        std::set<const Load*> told;
        for (const auto& line : ledger_.released()) {
            if (!in_period(line.at) || line.load == nullptr || !told.insert(line.load).second) continue;
            for (const auto& lacking : not_recorded_of_load(ledger_, line)) {
                std::vector<std::string> names;
                for (const auto* condition : lacking.asked_by)
                    names.push_back(condition_named(*condition, season_));
                say(fmt::format("its {} is not recorded, and {} depend{} on it", lacking.what,
                                fmt::join(names, ", "), names.size() == 1 ? "s" : ""),
                    "load " + line.load->load);
            }
        }
    }

    void shifts() {
        for (const auto& shift : season_.shifts.rows()) {
            if (!in_period(shift.start)) continue;
            if (!shift.end)
                say("the shift has no end", "shift " + shift.shift);
            else if (!shift.signed_at || *shift.signed_at > facts_.as_at)
                say("the shift is not signed", "shift " + shift.shift);
        }
    }

    [[nodiscard]] bool answers_a_trigger(const Event& row) const {
        return std::any_of(facts_.triggers.begin(), facts_.triggers.end(),
                           [&](const EventAnswer& answer) { return answer.row == &row; });
    }

    void events() {
        for (const auto* event : facts_.events) {
            if (event->action.empty() && !answers_a_trigger(*event))
                say("the event has no answer: what was done about it",
                    "event " + event->event + " " + event->what);
        }
    }

    void triggers() {
        for (const auto& answer : facts_.triggers) {
            const auto& event = answer.record.event;
            const std::string where = fmt::format("trigger {} at {} from {}", answer.record.of->number,
                                                  event.site, instant_text(event.over_since, season_.zone));
            if (answer.row == nullptr)
                say("no event of kind trigger answers it: log one with its condition and times", where);
            for (const auto lacks : answer.lacking)
                say(fmt::format("the event that answers it does not say {}", lacks),
                    where + (answer.row->event.empty() ? "" : ", event " + answer.row->event));
        }
    }

    const Ledger& ledger_;
    const Season& season_;
    const ReturnFacts& facts_;
    std::vector<Missing> missing_;
};

}  // namespace

std::vector<Missing> missing_in(const Ledger& ledger, const ReturnFacts& facts) {
    return MissingList(ledger, facts).find();
}

}  // namespace spoilbook
