// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/return/duties_in.h"

#include <algorithm>

namespace spoilbook {

namespace {

bool is_told(const DutyTime& time, const Period& period) {
    if (time.state == DutyState::nil) return false;
    // Due at 24:00 of the period's last day is due in it.
    const bool due_in_it = time.due && period.contains(*time.due - 1);
    const bool done_in_it = time.done != nullptr && period.contains(*time.done->done_at);
    if (due_in_it || done_in_it) return true;
    if (time.state == DutyState::coming || !time.arises || period.to <= *time.arises) return false;
    return period.contains(*time.arises) || time.state != DutyState::done;
}

}  // namespace

std::vector<DutyTime> duties_in(const Ledger& ledger, const Period& period, Instant as_at, Refusals& unread) {
    auto times = duty_calendar(ledger, as_at, &unread);
    std::erase_if(times, [&](const DutyTime& time) { return !is_told(time, period); });
    std::stable_sort(times.begin(), times.end(), [](const DutyTime& a, const DutyTime& b) {
        return a.due.value_or(*a.arises) < b.due.value_or(*b.arises);
    });
    return times;
}

}  // namespace spoilbook
