// SPDX-License-Identifier: GPL-3.0-or-later
// Wall clocks by the C library's zone files and nothing of ours, for evaluators that must not share our time.
#pragma once

#include <array>
#include <cstdint>
#include <cstdlib>
#include <ctime>
#include <string>

namespace spoilbook::plain {

/// One zone at a time for the whole test program: it sets TZ.
class Clock {
 public:
    explicit Clock(const std::string& zone) {
        setenv("TZ", zone.c_str(), 1);
        tzset();
    }

    static std::tm local(std::int64_t ms) {
        const std::time_t seconds = whole_seconds(ms);
        std::tm wall{};
        localtime_r(&seconds, &wall);
        return wall;
    }

    /// Local midnight of the day that lies so many days from the one of `wall`.
    static std::int64_t midnight(std::tm wall, int days = 0) {
        wall.tm_mday += days;
        wall.tm_hour = wall.tm_min = wall.tm_sec = 0;
        return instant(wall) * 1000;
    }

    /// The instant that many months or days earlier on the wall clock, months clamped.
    static std::int64_t earlier(std::int64_t ms, int months, int days) {
        std::tm wall = local(ms);
        const int month = wall.tm_year * 12 + wall.tm_mon - months;
        wall.tm_year = month / 12;
        wall.tm_mon = month % 12;
        wall.tm_mday = std::min(wall.tm_mday, days_in(wall.tm_year + 1900, wall.tm_mon)) - days;
        return instant(wall) * 1000 + (ms - whole_seconds(ms) * 1000);
    }

 private:
    static std::int64_t whole_seconds(std::int64_t ms) { return (ms - (ms % 1000 + 1000) % 1000) / 1000; }

    static int days_in(int year, int month) {
        static constexpr std::array days{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
        const bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
        return days.at(static_cast<std::size_t>(month)) + (month == 1 && leap ? 1 : 0);
    }

    static std::int64_t offset(std::int64_t seconds) { return local(seconds * 1000).tm_gmtoff; }

    /// Twice: the earlier. Never: by the offset before the gap.
    static std::int64_t instant(std::tm wall) {
        const std::int64_t as_utc = timegm(&wall);
        const std::int64_t before = as_utc - offset(as_utc - 86400);
        const std::int64_t after = as_utc - offset(as_utc + 86400);
        const auto shows = [as_utc](std::int64_t seconds) { return seconds + offset(seconds) == as_utc; };
        if (shows(before) && shows(after)) return std::min(before, after);
        return shows(after) ? after : before;
    }
};

}  // namespace spoilbook::plain
