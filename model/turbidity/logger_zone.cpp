// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/logger_zone.h"

#include "model/unit/calendar.h"

namespace spoilbook {

std::optional<int> fixed_offset_s(std::string_view text) {
    // Behind a date and clock, so that one reader of offsets does.
    const auto time = logger_time("2000-01-01 00:00 " + std::string(text));
    if (text.empty() || !time) return std::nullopt;
    return time->offset_s;
}

LoggerZone::LoggerZone(const std::string& name) : offset_s_(fixed_offset_s(name)) {
    if (offset_s_ || name.empty()) return;
    if (const auto zone = Zone::named(name)) zone_ = *zone;
}

std::optional<Instant> LoggerZone::instant(Day day, const LoggerTime& time, std::string& why) const {
    const auto offset = time.offset_s ? time.offset_s : offset_s_;
    if (offset) {
        const std::int64_t days = days_between(day, Day{1970, 1, 1});
        return Instant{days * ms_per_day + time.hour * ms_per_hour + time.minute * ms_per_minute +
                       (time.second_of_minute - *offset) * ms_per_second + time.millisecond};
    }
    if (!zone_) {
        why = "has no zone";
        return std::nullopt;
    }
    WallTime wall;
    wall.day = time.hour == 24 ? plus_days(day, 1) : day;
    wall.hour = time.hour % 24;
    wall.minute = time.minute;
    wall.second = time.second_of_minute;
    wall.millisecond = time.millisecond;
    const auto occurs = zone_->occurs(wall);
    if (occurs != Occurs::once) {
        why = occurs == Occurs::twice
                  ? "happens twice in " + zone_->name() + ": give the offset the logger kept"
                  : "does not exist in " + zone_->name() + ": give the offset the logger kept";
        return std::nullopt;
    }
    return zone_->instant(wall);
}

}  // namespace spoilbook
