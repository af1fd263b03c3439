// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace spoilbook {

/// A logger's file as lines of bytes that ASCII can be read from: without a byte order mark; UTF-16 becomes
/// one byte a character. CR alone ends a line where no LF does.
std::string logger_text(std::string_view bytes);

/// Walks the lines of a text; LF and CR LF end one. A quote that opens a field and closes within the next
/// twenty lines keeps its line breaks; the line then counts as its first.
class LoggerLines {
 public:
    explicit LoggerLines(std::string_view text) : rest_(text) {}
    /// False after the last.
    bool next(std::string_view& line);
    /// Of the line last given, from 1.
    [[nodiscard]] std::size_t number() const { return number_; }

 private:
    [[nodiscard]] std::size_t end_of_line();

    std::string_view rest_;
    std::size_t number_ = 0, next_number_ = 1;
};

/// The fields of a line, blanks and quotes at their ends taken off. Delimiter ' ': any run of blanks.
void split_line(std::string_view line, char delimiter, std::vector<std::string_view>& fields);

/// A number with this decimal mark, blanks about it allowed.
std::optional<double> logger_number(std::string_view text, char decimal);

/// A number whose other mark parts thousands, each group being whole: 1.234,5 with a comma, 1,234 with a
/// point.
std::optional<double> grouped_number(std::string_view text, char decimal);

/// AM, PM, a.m. or p.m.
bool is_half_day(std::string_view text);

/// Text for people: what is not UTF-8 is taken for Latin-1.
std::string shown_text(std::string_view text);

}  // namespace spoilbook
