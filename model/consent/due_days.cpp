// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/due_days.h"

#include <fmt/format.h>

#include <cmath>

#include "model/record/working_days.h"
#include "model/unit/calendar.h"

namespace spoilbook {

namespace {

/// The day after which the first working day is counted.
std::optional<Day> counted_after(const DutyTime& time, const Zone& zone) {
    if (time.event != nullptr) {
        const auto from = time.duty.due_after == "end" ? time.event->to : time.event->from;
        return from ? std::optional(zone.day_of(*from)) : std::nullopt;
    }
    if (!time.arises) return std::nullopt;
    // A period ends at the midnight that begins the next day.
    const bool is_period = time.covers && time.duty.when != DutyWhen::amount;
    return zone.day_of(is_period ? *time.arises - 1 : *time.arises);
}

}  // namespace

std::optional<DueDays> due_days(const DutyTime& time, const Zone& zone) {
    if (!time.due || !time.duty.due_n || time.duty.due_unit != "working_days") return std::nullopt;
    const auto after = counted_after(time, zone);
    if (!after) return std::nullopt;
    DueDays days{static_cast<int>(std::ceil(*time.duty.due_n)), *after, zone.day_of(*time.due - 1), {}, {}};
    const auto rest = not_working_from(time.consent == nullptr ? "" : time.consent->not_working);
    for (Day day = plus_days(*after, 1); day <= days.last; day = plus_days(day, 1)) {
        if (rest.has(day)) days.not_working.push_back(day);
    }
    const auto listed_to = rest.listed_to();
    if (listed_to && days.last.year > *listed_to) days.listed_to = listed_to;
    return days;
}

std::string listed_text(const DutyTime& time, const Zone& zone) {
    const auto days = due_days(time, zone);
    if (!days || !days->listed_to) return "";
    return fmt::format("holidays are listed to {} only", *days->listed_to);
}

std::optional<int> days_left(const DutyTime& time, const Zone& zone, Instant as_at) {
    return time.due ? std::optional(days_left(*time.due, zone, as_at)) : std::nullopt;
}

int days_left(Instant due, const Zone& zone, Instant as_at) {
    // Due at 24:00 is due on the day that ends there.
    return days_between(zone.day_of(due - 1), zone.day_of(as_at));
}

}  // namespace spoilbook
