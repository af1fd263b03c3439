// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/duty_matches.h"

#include <algorithm>

namespace spoilbook {

namespace {

std::vector<const DutyDone*> records_of(const Season& season, const Condition& condition, Instant as_at) {
    std::vector<const DutyDone*> records;
    for (const auto& row : season.duties_done.rows()) {
        const bool of_it =
            row.condition == condition.condition && (row.consent == Id{} || row.consent == condition.consent);
        if (of_it && row.done_at && *row.done_at <= as_at) records.push_back(&row);
    }
    std::stable_sort(records.begin(), records.end(),
                     [](const DutyDone* a, const DutyDone* b) { return *a->done_at < *b->done_at; });
    return records;
}

template <class Test>
DutyTime* first_open(std::vector<DutyTime>& times, Test test) {
    const auto found = std::find_if(times.begin(), times.end(),
                                    [&](const DutyTime& time) { return time.done == nullptr && test(time); });
    return found == times.end() ? nullptr : &*found;
}

DutyTime* time_of(const Zone& zone, const DutyDone& done, std::vector<DutyTime>& times) {
    if (!done.covers_from)
        return first_open(times, [&](const DutyTime& time) {
            return time.duty.when == DutyWhen::date ||
                   (time.arises && *time.arises <= *done.done_at && time.state != DutyState::nil);
        });
    const Instant from = *done.covers_from;
    // A step of an amount that is not reached yet cannot have been done.
    const auto begins = [](const DutyTime& time) {
        if (!time.arises) return std::optional<Instant>();
        return time.covers ? std::optional(time.covers->from) : time.arises;
    };
    auto* found = first_open(times, [&](const DutyTime& time) { return begins(time) == from; });
    if (found == nullptr) {
        found = first_open(times, [&](const DutyTime& time) {
            const auto begin = begins(time);
            return begin && zone.day_of(*begin) == zone.day_of(from);
        });
    }
    if (found != nullptr) return found;
    return first_open(times, [&](const DutyTime& time) {
        return time.arises && time.covers && time.covers->contains(from);
    });
}

}  // namespace

void match_done(const Season& season, const Condition& condition, Instant as_at,
                std::vector<DutyTime>& times) {
    for (const auto* record : records_of(season, condition, as_at)) {
        DutyTime* time = time_of(season.zone, *record, times);
        if (time == nullptr) continue;
        time->done = record;
        time->state = DutyState::done;
    }
}

}  // namespace spoilbook
