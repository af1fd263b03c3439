// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/answer/event_answers.h"
#include "model/consent/duty_calendar.h"

namespace spoilbook {

/// One response that a consent asks for to a passed trigger, with its own clock: it arises as the trigger
/// passes, and is done once the event is answered.
struct ResponseTime {
    EventAnswer answer;
    Response response;
    std::optional<Instant> due;        ///< the last instant in time; nothing: the condition sets none
    DutyState state = DutyState::due;  ///< due, overdue or done

    [[nodiscard]] bool late() const {
        return state == DutyState::done && due && answer.told_at && *answer.told_at > *due;
    }
};

/// Every response to every trigger passed by the as-at, in order of start and then of the condition's list.
/// What a tier asks for that has passed is owed after the all-clear too. Points into the watch and the
/// season.
std::vector<ResponseTime> response_times(TurbidityWatch& watch, const Season& season, Instant as_at);

}  // namespace spoilbook
