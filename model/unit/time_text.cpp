// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/unit/time_text.h"

#include <fmt/format.h>

#include <cstdlib>
#include <optional>

#include "model/unit/calendar.h"

namespace spoilbook {

namespace {

/// Takes the text apart from the left; every step says whether it went well.
class Cursor {
 public:
    explicit Cursor(std::string_view text) : rest_(text) {}

    [[nodiscard]] bool done() const { return rest_.empty(); }
    bool skip(char c) {
        if (rest_.empty() || rest_.front() != c) return false;
        rest_.remove_prefix(1);
        return true;
    }
    std::optional<int> digits(std::size_t n) {
        if (rest_.size() < n) return std::nullopt;
        int value = 0;
        for (std::size_t i = 0; i < n; ++i) {
            if (rest_[i] < '0' || rest_[i] > '9') return std::nullopt;
            value = value * 10 + (rest_[i] - '0');
        }
        rest_.remove_prefix(n);
        return value;
    }
    /// The digits of a fraction as milliseconds; nothing where there are none or a later one is not 0.
    std::optional<int> milliseconds() {
        int value = 0;
        std::size_t n = 0;
        for (; n < rest_.size() && rest_[n] >= '0' && rest_[n] <= '9'; ++n) {
            if (n < 3) value = value * 10 + (rest_[n] - '0');
            if (n >= 3 && rest_[n] != '0') return std::nullopt;
        }
        if (n == 0) return std::nullopt;
        for (std::size_t i = n; i < 3; ++i)
            value *= 10;
        rest_.remove_prefix(n);
        return value;
    }

 private:
    std::string_view rest_;
};

Refusal not_a_time(std::string_view text) {
    return {"not-a-time", "", fmt::format("\"{}\" is not a time", text),
            "write it as 2025-09-28T01:30:00+12:00, in whole milliseconds"};
}

std::optional<Day> take_day(Cursor& cursor) {
    const auto year = cursor.digits(4);
    if (!year || !cursor.skip('-')) return std::nullopt;
    const auto month = cursor.digits(2);
    if (!month || !cursor.skip('-')) return std::nullopt;
    const auto day = cursor.digits(2);
    if (!day || !exists({*year, *month, *day})) return std::nullopt;
    return Day{*year, *month, *day};
}

/// Fills hour to millisecond. False where the text is no time of day.
bool take_clock(Cursor& cursor, WallTime& wall) {
    const auto hour = cursor.digits(2);
    if (!hour || !cursor.skip(':')) return false;
    const auto minute = cursor.digits(2);
    if (!minute || *hour > 24 || *minute > 59) return false;
    wall.hour = *hour;
    wall.minute = *minute;
    if (cursor.skip(':')) {
        const auto second = cursor.digits(2);
        if (!second || *second > 59) return false;
        wall.second = *second;
        if (cursor.skip('.')) {
            const auto ms = cursor.milliseconds();
            if (!ms) return false;
            wall.millisecond = *ms;
        }
    }
    if (wall.hour == 24) {
        if (wall.minute != 0 || wall.second != 0 || wall.millisecond != 0) return false;
        wall.hour = 0;
        wall.day = plus_days(wall.day, 1);
    }
    return true;
}

struct Offset {
    bool given = false;
    int seconds = 0;
};

std::optional<Offset> take_offset(Cursor& cursor) {
    if (cursor.done()) return Offset{};
    if (cursor.skip('Z')) return cursor.done() ? std::optional(Offset{true, 0}) : std::nullopt;
    const int sign = cursor.skip('+') ? 1 : cursor.skip('-') ? -1 : 0;
    const auto hours = sign == 0 ? std::nullopt : cursor.digits(2);
    if (!hours || *hours > 23) return std::nullopt;
    int minutes = 0;
    if (!cursor.done()) {
        cursor.skip(':');
        const auto given = cursor.digits(2);
        if (!given || *given > 59) return std::nullopt;
        minutes = *given;
    }
    if (!cursor.done()) return std::nullopt;
    return Offset{true, sign * (*hours * 3600 + minutes * 60)};
}

Checked<Instant> local_instant(std::string_view text, const WallTime& wall, const Zone& zone) {
    switch (zone.occurs(wall)) {
        case Occurs::twice:
            return Refusal{"ambiguous-time", "",
                           fmt::format("\"{}\" happens twice in {} (clocks go back)", text, zone.name()),
                           "write the offset behind it, as in +13:00"};
        case Occurs::never:
            return Refusal{"no-such-time", "",
                           fmt::format("\"{}\" does not exist in {} (clocks go forward)", text, zone.name()),
                           "write the offset behind it, or the time that the clock showed"};
        case Occurs::once:
            break;
    }
    return zone.instant(wall);
}

}  // namespace

Checked<Instant> parse_instant(std::string_view text, const Zone& zone) {
    Cursor cursor(text);
    WallTime wall;
    const auto day = take_day(cursor);
    if (!day || !(cursor.skip('T') || cursor.skip(' '))) return not_a_time(text);
    wall.day = *day;
    if (!take_clock(cursor, wall)) return not_a_time(text);
    const auto offset = take_offset(cursor);
    if (!offset) return not_a_time(text);
    if (!offset->given) return local_instant(text, wall, zone);
    return Zone::utc().instant(wall) - offset->seconds * ms_per_second;
}

Checked<Instant> parse_instant_or_day(std::string_view text, const Zone& zone) {
    if (text.size() != 10) return parse_instant(text, zone);
    const auto day = parse_day(text);
    if (!day) return day.refusals();
    return zone.day_start(*day);
}

Checked<Day> parse_day(std::string_view text) {
    Cursor cursor(text);
    const auto day = take_day(cursor);
    if (!day || !cursor.done()) {
        return Refusal{"not-a-day", "", fmt::format("\"{}\" is not a day", text), "write it as 2025-09-28"};
    }
    return *day;
}

std::string day_text(Day day) {
    return fmt::format("{:04}-{:02}-{:02}", day.year, day.month, day.day);
}

std::string month_text(Day day) {
    return fmt::format("{:04}-{:02}", day.year, day.month);
}

std::string instant_text(Instant at, const Zone& zone) {
    WallTime wall = zone.wall(at);
    if (wall.offset_s % 60 != 0)
        wall = Zone::utc().wall(at);  // local mean time: ISO has no seconds in offsets
    const int offset = std::abs(wall.offset_s) / 60;
    std::string text =
        fmt::format("{}T{:02}:{:02}:{:02}", day_text(wall.day), wall.hour, wall.minute, wall.second);
    if (wall.millisecond != 0) text += fmt::format(".{:03}", wall.millisecond);
    if (zone.name() == "UTC") return text + "Z";
    return text + fmt::format("{}{:02}:{:02}", wall.offset_s < 0 ? '-' : '+', offset / 60, offset % 60);
}

std::optional<Day> day_ending(Instant at, const Zone& zone) {
    const WallTime wall = zone.wall(at);
    const bool midnight = wall.hour == 0 && wall.minute == 0 && wall.second == 0 && wall.millisecond == 0;
    return midnight ? std::optional(plus_days(wall.day, -1)) : std::nullopt;
}

std::string due_text(Instant due, const Zone& zone) {
    constexpr std::size_t clock = 10, offset = 19;  // where they begin
    std::string text = instant_text(due, zone);
    const auto ended = day_ending(due, zone);
    if (!ended || text.substr(clock, offset - clock) != "T00:00:00") return text;
    return day_text(*ended) + "T24:00:00" + text.substr(offset);
}

}  // namespace spoilbook
