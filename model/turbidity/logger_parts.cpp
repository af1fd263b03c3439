// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/logger_parts.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

#include "model/turbidity/logger_lines.h"
#include "model/unit/calendar.h"

namespace spoilbook {

namespace {

constexpr std::array years{"year",
                           "yyyy",
                           "yy",
                           "yr",
                           "jahr",
                           "annee",
                           "ann\xC3\xA9"
                           "e",
                           "jaar"};
constexpr std::array months{"month", "mo", "mon", "monat", "mois", "maand"};
constexpr std::array days{"day", "dd", "dy", "tag", "jour", "dag", "day of month"};
constexpr std::array days_of_year{"day of year", "dayofyear",  "day_of_year", "doy",      "yday",
                                  "julian day",  "julian_day", "julianday",   "julian",   "julian date",
                                  "jday",        "jd",         "ordinal day", "year day", "yearday",
                                  "tag im jahr", "jultag"};
constexpr std::array hours{"hour", "hours", "hh", "hr", "hrs", "stunde", "heure", "uur"};
constexpr std::array minutes{"minute", "minutes", "min", "mn", "mi"};
constexpr std::array seconds{"second", "seconds", "sec", "secs", "ss"};

/// In lower case, without the mark of a remark before it and a unit in brackets behind it.
std::string bare_name(std::string_view head) {
    std::string name;
    for (const char c : head.substr(0, head.find_first_of("([")))
        name += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    const auto from = name.find_first_not_of("# ");
    const auto to = name.find_last_not_of(" :.");
    return from == std::string::npos ? "" : name.substr(from, to + 1 - from);
}

template <std::size_t n>
bool is_one(const std::array<const char*, n>& names, const std::string& name) {
    return std::find(names.begin(), names.end(), name) != names.end();
}

std::optional<double> part_of(const std::vector<std::string_view>& fields,
                              std::optional<std::size_t> column) {
    if (!column || *column >= fields.size()) return std::nullopt;
    const auto point = logger_number(fields[*column], '.');
    return point ? point : logger_number(fields[*column], ',');
}

/// A whole number in [low, high].
std::optional<int> whole_part(const std::vector<std::string_view>& fields, std::optional<std::size_t> column,
                              int low, int high) {
    const auto number = part_of(fields, column);
    if (!number || std::floor(*number) != *number || *number < low || *number > high) return std::nullopt;
    return static_cast<int>(*number);
}

void set_day(Day day, LoggerTime& time) {
    time.first = day.year;
    time.second = day.month;
    time.third = day.day;
    time.year_first = time.has_date = true;
}

/// What is left of a day, as a time of day.
void set_rest(double part_of_day, LoggerTime& time) {
    const auto second = static_cast<int>(std::lround(part_of_day * 86400));
    time.hour = second / 3600;  // 24 where the rest rounds to the day's end
    time.minute = second / 60 % 60;
    time.second_of_minute = second % 60;
    time.has_clock = true;
}

}  // namespace

TimeParts parts_named(const std::vector<std::string_view>& heads) {
    TimeParts parts;
    const auto first = [](std::optional<std::size_t>& part, std::size_t k) {
        if (!part) part = k;
    };
    for (std::size_t k = 0; k < heads.size(); ++k) {
        const auto name = bare_name(heads[k]);
        if (is_one(years, name)) first(parts.year, k);
        // MM stands for months and for minutes: which, says what it stands behind.
        if (is_one(months, name) || (name == "mm" && !parts.hour)) first(parts.month, k);
        if (is_one(days, name)) first(parts.day, k);
        if (is_one(days_of_year, name)) first(parts.day_of_year, k);
        if (is_one(hours, name)) first(parts.hour, k);
        if (is_one(minutes, name) || (name == "mm" && parts.hour)) first(parts.minute, k);
        if (is_one(seconds, name)) first(parts.second, k);
    }
    // "Day" beside a year, and no month: the day of the year.
    if (parts.year && parts.day && !parts.month && !parts.day_of_year)
        std::swap(parts.day, parts.day_of_year);
    return parts;
}

bool add_clock_parts(const std::vector<std::string_view>& fields, const TimeParts& parts, LoggerTime& time) {
    if (!parts.hour) return true;
    const auto hour = whole_part(fields, parts.hour, 0, 24);
    const auto minute = parts.minute ? whole_part(fields, parts.minute, 0, 59) : 0;
    const auto second = parts.second ? part_of(fields, parts.second) : 0;
    if (!hour || !minute || !second || *second < 0 || *second >= 60) return false;
    const auto ms = static_cast<int>(std::floor(*second * 1000));
    time.hour = *hour;
    time.minute = *minute;
    time.second_of_minute = ms / 1000;
    time.millisecond = ms % 1000;
    time.has_clock = true;
    return true;
}

bool add_half_part(const std::vector<std::string_view>& fields, const TimeParts& parts, LoggerTime& time) {
    if (!parts.half) return true;
    if (*parts.half >= fields.size() || !is_half_day(fields[*parts.half])) return false;
    if (time.hour < 1 || time.hour > 12) return false;
    const char first = fields[*parts.half].front();
    time.hour = time.hour % 12 + (first == 'p' || first == 'P' ? 12 : 0);
    return true;
}

std::optional<LoggerTime> parts_time(const std::vector<std::string_view>& fields, const TimeParts& parts) {
    const auto year = whole_part(fields, parts.year, 0, 2099);
    if (!year || (*year > 99 && *year < 1900)) return std::nullopt;
    const int whole_year = *year > 99 ? *year : *year + (*year < 70 ? 2000 : 1900);
    LoggerTime time;
    if (parts.day_of_year) {
        const auto number = part_of(fields, parts.day_of_year);
        if (!number || *number < 1 || *number >= 367) return std::nullopt;
        const Day day = plus_days({whole_year, 1, 1}, static_cast<int>(*number) - 1);
        if (day.year != whole_year) return std::nullopt;  // day 366 of a common year
        set_day(day, time);
        const double rest = *number - std::floor(*number);
        const bool has_part = fields[*parts.day_of_year].find_first_of(".,") != std::string_view::npos;
        if (has_part && !parts.hour) set_rest(rest, time);
    } else {
        const auto month = whole_part(fields, parts.month, 1, 12);
        const auto day = whole_part(fields, parts.day, 1, 31);
        if (!month || !day || !exists({whole_year, *month, *day})) return std::nullopt;
        set_day({whole_year, *month, *day}, time);
    }
    return add_clock_parts(fields, parts, time) ? std::optional(time) : std::nullopt;
}

std::optional<TimeParts> likely_parts(const std::vector<std::string_view>& fields) {
    for (std::size_t k = 0; k + 2 < fields.size() && k < 3; ++k) {
        if (fields[k].size() != 4 || !whole_part(fields, k, 1990, 2069)) continue;
        if (fields[k + 1].size() > 3 || !whole_part(fields, k + 1, 1, 366)) continue;
        TimeParts parts;
        parts.year = k;
        parts.day_of_year = k + 1;
        return parts;
    }
    return std::nullopt;
}

}  // namespace spoilbook
