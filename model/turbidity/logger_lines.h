// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "model/turbidity/logger_text.h"

namespace spoilbook {

/// Walks the lines of a logger's file; LF and CR LF end one. A quote that opens a field and closes within the
/// next twenty lines keeps its line breaks; the line then counts as its first. Holds little more than the
/// line in memory.
class LoggerLines {
 public:
    /// The bytes must outlive it.
    explicit LoggerLines(const ByteSource& bytes) : source_(bytes) {}
    /// False after the last. The line stands until the next call.
    bool next(std::string_view& line);
    /// Of the line last given, from 1.
    [[nodiscard]] std::size_t number() const { return number_; }

 private:
    [[nodiscard]] std::size_t line_end(std::size_t from);
    [[nodiscard]] std::size_t end_of_line();
    void forget_past();

    LoggerText source_;
    std::string text_;    ///< what was fetched and is not forgotten
    std::size_t at_ = 0;  ///< where in it the next line begins
    std::size_t number_ = 0, next_number_ = 1;
};

/// The fields of a line, blanks and quotes at their ends taken off. Delimiter ' ': any run of blanks.
void split_line(std::string_view line, char delimiter, std::vector<std::string_view>& fields);

/// The same of a line of heads, a lone # before them taken off: it stands over no column.
void split_heads(std::string_view line, char delimiter, std::vector<std::string_view>& fields);

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
