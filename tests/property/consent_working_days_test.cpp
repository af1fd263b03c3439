// SPDX-License-Identifier: GPL-3.0-or-later
// Working days against counting on the fingers: day after day through the calendar, weekdays from Sakamoto's
// rule (MEM), not from ours.
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include "model/consent/duty_calendar.h"
#include "model/record/working_days.h"
#include "model/unit/calendar.h"

using namespace spoilbook;

namespace {

/// 0 Sunday … 6 Saturday
int sakamoto(int year, int month, int day) {
    static constexpr int shifts[] = {0, 3, 2, 5, 0, 3, 5, 1, 4, 6, 2, 4};
    if (month < 3) --year;
    return (year + year / 4 - year / 100 + year / 400 + shifts[month - 1] + day) % 7;
}

bool is_free(int year, int month, int day) {
    const int weekday = sakamoto(year, month, day);
    if (weekday == 0 || weekday == 6) return true;
    if (month == 2 && day == 6) return true;
    return (month == 12 && day >= 20) || (month == 1 && day <= 10);
}

void next_day(int& year, int& month, int& day) {
    static constexpr int lengths[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    const bool leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    const int length = month == 2 && leap ? 29 : lengths[month - 1];
    if (++day <= length) return;
    day = 1;
    if (++month <= 12) return;
    month = 1;
    ++year;
}

}  // namespace

TEST_CASE("n working days end where counting day by day ends, in any zone and across any break", "[duty]") {
    const NotWorking free = not_working_from(R"({"weekends":true,"yearly":["12-20..01-10","02-06"]})");
    const bool ok = rc::check("working days", [&] {
        const auto name = *rc::gen::element<std::string>("Pacific/Auckland", "Europe/London",
                                                         "America/New_York", "Australia/Lord_Howe");
        const auto zone = *Zone::named(name);
        const auto minutes = *rc::gen::inRange<std::int64_t>(0, 60LL * 24 * 365 * 30);
        const int n = *rc::gen::inRange(1, 60);
        const Instant at{946'684'800'000 + minutes * ms_per_minute};
        auto [year, month, day] = zone.day_of(at);
        for (int left = n; left > 0;) {
            next_day(year, month, day);
            if (!is_free(year, month, day)) --left;
        }
        const auto due = due_after(zone, at, n, "working_days", free);
        RC_ASSERT(due.has_value());
        // 24:00 of that day: the last millisecond before lies in it, the instant itself does not.
        RC_ASSERT(zone.day_of(*due - 1) == (Day{year, month, day}));
        RC_ASSERT(zone.day_of(*due) != (Day{year, month, day}));
    });
    CHECK(ok);
}
