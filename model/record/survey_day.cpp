// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/survey_day.h"

#include "model/unit/calendar.h"
#include "model/unit/time_text.h"

namespace spoilbook {

std::optional<Instant> end_of_survey(const Survey* survey, const Zone& zone) {
    if (survey == nullptr) return std::nullopt;
    const auto day = parse_day(survey->surveyed_on);
    return day ? std::optional(zone.day_start(plus_days(*day, 1))) : std::nullopt;
}

}  // namespace spoilbook
