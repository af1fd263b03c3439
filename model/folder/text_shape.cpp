// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/text_shape.h"

#include "model/unit/calendar.h"

namespace spoilbook {

namespace {

/// Two digits at `at`, or -1.
int two_digits(std::string_view text, std::size_t at) {
    if (at + 2 > text.size()) return -1;
    const char a = text[at];
    const char b = text[at + 1];
    if (a < '0' || a > '9' || b < '0' || b > '9') return -1;
    return (a - '0') * 10 + (b - '0');
}

bool is_span(std::string_view text, bool (*is_end)(std::string_view)) {
    const auto dots = text.find("..");
    return dots != std::string_view::npos && is_end(text.substr(0, dots)) && is_end(text.substr(dots + 2));
}

}  // namespace

bool is_month_day(std::string_view text) {
    constexpr int leap_year = 2024;
    return text.size() == 5 && text[2] == '-' &&
           exists({leap_year, two_digits(text, 0), two_digits(text, 3)});
}

bool is_month_day_span(std::string_view text) {
    return is_span(text, is_month_day);
}

bool is_clock_time(std::string_view text) {
    if (text.size() != 5 || text[2] != ':') return false;
    const int hour = two_digits(text, 0);
    const int minute = two_digits(text, 3);
    if (hour < 0 || minute < 0 || minute > 59) return false;
    return hour < 24 || (hour == 24 && minute == 0);
}

bool is_clock_span(std::string_view text) {
    return is_span(text, is_clock_time);
}

}  // namespace spoilbook
