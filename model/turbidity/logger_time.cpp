// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/logger_time.h"

#include <algorithm>
#include <array>
#include <cctype>

#include "model/unit/calendar.h"

namespace spoilbook {

namespace {

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}
char lower(char c) {
    return static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
}

/// Takes the text apart from the left.
class Words {
 public:
    explicit Words(std::string_view text) : rest_(text) { blanks(); }

    [[nodiscard]] bool done() const { return rest_.empty(); }
    [[nodiscard]] char next() const { return rest_.empty() ? '\0' : rest_.front(); }
    void skip() { rest_.remove_prefix(1); }
    void blanks() {
        for (std::size_t n = blank(); n > 0; n = blank())
            rest_.remove_prefix(n);
    }
    bool take(char c) {
        if (next() != c) return false;
        skip();
        return true;
    }
    /// A whole number of at most `most` digits, and how many it had.
    std::optional<int> number(std::size_t most, std::size_t* digits = nullptr) {
        std::size_t n = 0;
        int value = 0;
        while (n < most && n < rest_.size() && is_digit(rest_[n]))
            value = value * 10 + (rest_[n++] - '0');
        if (n == 0) return std::nullopt;
        rest_.remove_prefix(n);
        if (digits != nullptr) *digits = n;
        return value;
    }
    [[nodiscard]] std::size_t digits_ahead() const {
        std::size_t n = 0;
        while (n < rest_.size() && is_digit(rest_[n]))
            ++n;
        return n;
    }
    /// Letters, in lower case, at most 12.
    std::string letters() {
        std::string word;
        while (!rest_.empty() && std::isalpha(static_cast<unsigned char>(rest_.front())) != 0 &&
               word.size() < 12) {
            word += lower(rest_.front());
            skip();
        }
        return word;
    }
    [[nodiscard]] std::string_view rest() const { return rest_; }
    void go_to(std::string_view rest) { rest_ = rest; }

 private:
    /// Bytes of a blank at the front: also of those that do not break a line (U+00A0, U+202F).
    [[nodiscard]] std::size_t blank() const {
        if (rest_.starts_with(' ') || rest_.starts_with('\t')) return 1;
        return rest_.starts_with("\xC2\xA0") ? 2 : rest_.starts_with("\xE2\x80\xAF") ? 3 : 0;
    }

    std::string_view rest_;
};

std::optional<int> month_named(const std::string& word) {
    static constexpr std::array names{"jan", "feb", "mar", "apr", "may", "jun",
                                      "jul", "aug", "sep", "oct", "nov", "dec"};
    for (std::size_t i = 0; i < names.size() && word.size() >= 3; ++i) {
        if (word.compare(0, 3, names[i]) == 0) return static_cast<int>(i) + 1;
    }
    // Where German, Dutch, the languages of the North, French, Spanish, Portuguese and Italian differ.
    static constexpr std::array<std::pair<std::string_view, int>, 22> others{
        {{"mai", 5},  {"mrz", 3}, {"mrt", 3}, {"mei", 5}, {"maj", 5}, {"okt", 10}, {"dez", 12}, {"des", 12},
         {"fev", 2},  {"avr", 4}, {"aou", 8}, {"ene", 1}, {"abr", 4}, {"ago", 8},  {"dic", 12}, {"set", 9},
         {"out", 10}, {"gen", 1}, {"mag", 5}, {"giu", 6}, {"lug", 7}, {"ott", 10}}};
    for (const auto& [name, month] : others) {
        if (word.compare(0, 3, name) == 0) return month;
    }
    return std::nullopt;
}

/// 20250928, the year first.
bool compact_date(Words& words, LoggerTime& time) {
    time.first = *words.number(4);
    time.second = *words.number(2);
    time.third = *words.number(2);
    time.year_first = time.has_date = true;
    // Long counts and serial numbers are no dates.
    return time.first >= 1900 && time.first < 2100 && time.second <= 12 && time.third <= 31;
}

/// Apr 3, 2026
bool worded_date(Words& words, LoggerTime& time) {
    const auto month = month_named(words.letters());
    words.blanks();
    const auto day = words.number(2);
    words.take(',');
    words.blanks();
    std::size_t digits = 0;
    const auto year = words.number(4, &digits);
    if (!month || !day || digits != 4) return false;
    time.first = *day;
    time.second = *month;
    time.third = *year;
    time.month_named = time.has_date = true;
    return true;
}

/// 2026-093, the day of a year (ISO 8601, 5.2.2: three digits).
bool ordinal_date(int year, Words& words, LoggerTime& time) {
    const int of_year = *words.number(3);
    const Day day = plus_days({year, 1, 1}, of_year - 1);
    time.first = day.year;
    time.second = day.month;
    time.third = day.day;
    time.year_first = time.has_date = true;
    return year >= 1900 && of_year >= 1 && day.year == year;
}

bool take_date(Words& words, LoggerTime& time) {
    if (words.digits_ahead() >= 8) return compact_date(words, time);
    if (std::isalpha(static_cast<unsigned char>(words.next())) != 0) return worded_date(words, time);
    std::size_t digits = 0;
    const auto first = words.number(4, &digits);
    if (!first) return false;
    const char mark = words.next();
    if (mark != '-' && mark != '/' && mark != '.' && mark != ' ') return false;
    words.skip();
    if (digits == 4 && mark != '.' && mark != ' ' && words.digits_ahead() == 3)
        return ordinal_date(*first, words, time);
    if (mark == '.') words.blanks();
    if (std::isalpha(static_cast<unsigned char>(words.next())) != 0) {
        const auto month = month_named(words.letters());
        if (!month || digits > 2) return false;
        time.second = *month;
        time.month_named = true;
        if (!words.take(mark) && !words.take(' ')) return false;
    } else {
        const auto second = words.number(2);
        if (!second || mark == ' ' || !words.take(mark)) return false;
        time.second = *second;
    }
    std::size_t year_digits = 0;
    const auto third = words.number(4, &year_digits);
    if (!third || year_digits == 3 || digits == 3) return false;
    if (digits < 4 && year_digits == 1) return false;
    time.first = *first;
    time.first_padded = digits == 2;
    time.third = *third;
    time.year_first = digits == 4;
    time.has_date = true;
    return true;
}

bool take_fraction(Words& words, LoggerTime& time) {
    const std::size_t digits = words.digits_ahead();
    if (digits == 0) return false;
    int scale = 100;
    for (std::size_t i = 0; i < digits; ++i, scale /= 10)
        time.millisecond += *words.number(1) * scale;
    return true;
}

bool take_clock(Words& words, LoggerTime& time) {
    const std::size_t ahead = words.digits_ahead();
    const bool compact = ahead == 4 || ahead == 6;
    const auto hour = words.number(2);
    if (!hour || (!compact && !words.take(':'))) return false;
    const auto minute = words.number(2);
    if (!minute || *hour > 24 || *minute > 59) return false;
    time.hour = *hour;
    time.minute = *minute;
    if (compact ? ahead == 6 : words.take(':')) {
        const auto second = words.number(2);
        if (!second || *second > 59) return false;
        time.second_of_minute = *second;
        if ((words.take('.') || words.take(',')) && !take_fraction(words, time)) return false;
    }
    time.has_clock = true;
    return true;
}

/// AM and PM; 12 is the first hour of each.
bool take_half(const std::string& word, LoggerTime& time) {
    if (word != "am" && word != "pm") return false;
    if (time.hour < 1 || time.hour > 12) return false;
    time.hour = time.hour % 12 + (word == "pm" ? 12 : 0);
    return true;
}

bool take_offset(Words& words, LoggerTime& time) {
    const int sign = words.take('+') ? 1 : words.take('-') ? -1 : 0;
    if (sign == 0) return false;
    const auto hours = words.number(2);
    if (!hours || *hours > 14) return false;
    words.take(':');
    int minutes = 0;
    if (words.digits_ahead() > 0) minutes = words.number(2).value_or(0);
    time.offset_s = sign * (*hours * 3600 + minutes * 60);
    return true;
}

/// Three to five capitals that end the text.
bool is_zone_word(std::string_view text) {
    return text.size() >= 3 && text.size() <= 5 &&
           std::all_of(text.begin(), text.end(), [](char c) { return c >= 'A' && c <= 'Z'; });
}

bool take_tail(Words& words, LoggerTime& time) {
    words.blanks();
    while (!words.done()) {
        if (std::isalpha(static_cast<unsigned char>(words.next())) != 0) {
            const auto rest = words.rest();
            auto word = words.letters();
            if ((word == "a" || word == "p") && words.take('.')) {
                word += words.letters();
                words.take('.');
            }
            if (word == "z" || word == "utc" || word == "gmt") {
                time.offset_s = 0;
            } else if (!take_half(word, time)) {
                if (!time.has_clock || !words.done() || !is_zone_word(rest)) return false;
                time.zone_word = rest;
            }
        } else if (!take_offset(words, time)) {
            return false;
        }
        words.blanks();
    }
    return true;
}

}  // namespace

std::optional<LoggerTime> logger_time(std::string_view text) {
    Words words(text);
    LoggerTime time;
    const auto begin = words.rest();
    if (!take_date(words, time)) {
        words.go_to(begin);
        time = {};
        if (begin.find(':') == std::string_view::npos || !take_clock(words, time)) return std::nullopt;
        return take_tail(words, time) ? std::optional(time) : std::nullopt;
    }
    if (!words.done() && (words.next() == 'T' || words.next() == ',')) words.skip();
    words.blanks();
    if (is_digit(words.next()) && !take_clock(words, time)) return std::nullopt;
    return take_tail(words, time) ? std::optional(time) : std::nullopt;
}

std::optional<LoggerTime> bare_clock(std::string_view text) {
    const std::size_t digits = std::min(text.find_first_not_of("0123456789"), text.size());
    const bool dotted = digits < text.size();
    if (digits == 0 || digits > (dotted ? 2U : 4U)) return std::nullopt;
    if (dotted && (text[digits] != '.' || text.size() != digits + 3)) return std::nullopt;
    int number = 0;
    for (const char c : text) {
        if (c == '.') continue;
        if (!is_digit(c)) return std::nullopt;
        number = number * 10 + (c - '0');
    }
    LoggerTime time;
    time.hour = number / 100;
    time.minute = number % 100;
    time.has_clock = true;
    if (time.hour > 24 || time.minute > 59) return std::nullopt;
    return time;
}

std::optional<LoggerTime> logger_clock(std::string_view text) {
    const auto time = logger_time(text);
    return time && time->has_clock ? time : bare_clock(text);
}

std::optional<Day> day_of(const LoggerTime& time, DateOrder order) {
    Day day{time.first, time.second, time.third};
    if (!time.year_first && (time.month_named || order == DateOrder::dmy))
        day = {time.third, time.second, time.first};
    else if (!time.year_first && order == DateOrder::mdy)
        day = {time.third, time.first, time.second};
    if (day.year < 100) day.year += day.year < 70 ? 2000 : 1900;
    if (!exists(day)) return std::nullopt;
    return day;
}

}  // namespace spoilbook
