// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command/command.h"
#include "model/answer/row_json.h"
#include "model/answer/turbidity.h"
#include "model/consent/duty_calendar.h"
#include "model/consent/limit.h"

namespace spoilbook {

// One row each of what `sbk duties` and `sbk turbidity` print, and `sbk conditions` with them.
nlohmann::ordered_json duty_json(const DutyTime& time, const Zone& zone);
nlohmann::ordered_json event_json(const TriggerRecord& record, const Zone& zone);

/// The same of a duty for people, a line.
std::string duty_line(const DutyTime& time, const Zone& zone);

}  // namespace spoilbook
