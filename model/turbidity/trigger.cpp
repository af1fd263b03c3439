// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/trigger.h"

#include <algorithm>
#include <cmath>

#include "model/turbidity/site_watch.h"

namespace spoilbook {

namespace {

class EventSearch {
 public:
    EventSearch(const Trigger& trigger, const SeriesOf& series_of, const WorkingTime& working,
                const Zone& zone)
        : working_(working), zone_(zone) {
        for (const auto& site : trigger.sites)
            watches_.emplace_back(trigger, site, series_of);
    }

    TriggerOutcome run() {
        // All sites' readings of one moment are judged before any event is closed by one of them.
        while (const auto t = earliest()) {
            for (auto& watch : watches_) {
                if (watch.next_time() == *t) step(watch);
            }
            close_events(*t);
        }
        for (const auto& watch : watches_)
            outcome_.sites.push_back(watch.standing());
        return std::move(outcome_);
    }

 private:
    [[nodiscard]] std::optional<Instant> earliest() const {
        std::optional<Instant> first;
        for (const auto& watch : watches_) {
            const auto next = watch.next_time();
            if (next && (!first || *next < *first)) first = next;
        }
        return first;
    }

    void step(SiteWatch& watch) {
        if (watch.step(working_, zone_)) {
            watch.open(outcome_.events.size());
            outcome_.events.push_back(watch.passed());
            ++open_;
        }
        const auto& standing = watch.standing();
        if (!standing.open || !standing.last.compared) return;
        TriggerEvent& event = outcome_.events[*standing.open];
        if (*standing.last.compared <= event.peak) return;
        event.peak = *standing.last.compared;
        event.peak_at = *standing.at;
    }

    void close_events(Instant t) {
        if (open_ == 0) return;
        for (auto& watch : watches_) {
            if (!watch.standing().open || !is_clear(watch, t)) continue;
            outcome_.events[*watch.standing().open].end = t;
            watch.close();
            --open_;
        }
    }

    [[nodiscard]] bool is_clear(const SiteWatch& of, Instant t) const {
        const AllClear& clear = of.version().rule.clear;
        const auto held = std::llround(clear.held_hours * static_cast<double>(ms_per_hour));
        bool told_now = false;
        std::size_t found = 0;
        for (const auto& watch : watches_) {
            const auto& standing = watch.standing();
            const bool listed =
                std::find(clear.listed.begin(), clear.listed.end(), standing.site) != clear.listed.end();
            const bool asked = clear.sites == AllClear::Sites::same     ? &watch == &of
                               : clear.sites == AllClear::Sites::listed ? listed
                                                                        : true;
            if (!asked) continue;
            ++found;
            if (!standing.clear_since || t - *standing.clear_since < held) return false;
            told_now = told_now || (standing.at == t && standing.last.telling == Telling::not_over);
        }
        return told_now && (clear.sites != AllClear::Sites::listed || found == clear.listed.size());
    }

    const WorkingTime& working_;
    const Zone& zone_;
    std::deque<SiteWatch> watches_;
    TriggerOutcome outcome_;
    std::size_t open_ = 0;
};

}  // namespace

TriggerOutcome find_events(const Trigger& trigger, const SeriesOf& series_of, const WorkingTime& working,
                           const Zone& zone) {
    return EventSearch(trigger, series_of, working, zone).run();
}

}  // namespace spoilbook
