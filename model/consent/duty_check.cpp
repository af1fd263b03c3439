// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/duty_check.h"

#include <fmt/format.h>

#include "model/consent/duty_calendar.h"
#include "model/unit/time_text.h"

namespace spoilbook {

CheckReason judge_duty(const Ledger& ledger, const Condition& condition, Instant at) {
    CheckReason reason;
    Refusals refusals;
    const auto times = duty_times(ledger, condition, at, &refusals);
    if (!refusals.empty()) {
        reason.why = "what it asks for does not read";
        return reason;
    }
    reason.state = CheckState::clear;
    for (const auto& time : times) {
        if (!time.duty.blocks_release || time.state != DutyState::overdue) continue;
        reason.state = CheckState::hold;
        reason.why = fmt::format("its {} was due by {} and is not recorded as done", time.duty.what,
                                 due_text(*time.due, ledger.season().zone));
        break;
    }
    return reason;
}

}  // namespace spoilbook
