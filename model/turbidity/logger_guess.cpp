// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/logger_guess.h"

#include <fmt/format.h>

#include <cctype>

#include "model/turbidity/logger_guesser.h"

namespace spoilbook {

namespace {

std::string shown(char mark) {
    return mark == '\t' ? "tabs" : mark == ' ' ? "blanks" : fmt::format("\"{}\"", mark);
}

/// What a file without a table is, where its first bytes tell.
Refusal no_table(const ByteSource& bytes, const std::string& file) {
    const std::string mark = bytes.piece(0, 4);
    if (mark == "PK\x03\x04" || mark == "\xD0\xCF\x11\xE0")
        return {"no-table", file, "it is a spreadsheet or an archive, not text",
                "save its sheet as CSV, and take that in"};
    return {"no-table", file, "no line has a date and something beside it",
            "export the readings as text, one a line, with the date in one column (2026-04-03 13:00) or date "
            "and time of day in two"};
}

}  // namespace

std::string lower_case(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return text;
}

bool says_any(const std::string& text, std::initializer_list<const char*> words) {
    const auto small = lower_case(text);
    return std::any_of(words.begin(), words.end(),
                       [&](const char* word) { return small.find(word) != std::string::npos; });
}

std::string LoggerGuesser::shown_column(std::size_t k) const {
    return column(k).name.empty() ? fmt::format("column {}", k + 1)
                                  : fmt::format("column {} \"{}\"", k + 1, column(k).name);
}

LoggerGuess LoggerGuesser::run() {
    layout().delimiter = table().delimiter;
    layout().first_row = table().first_row;
    assume(fmt::format("fields are parted by {}, the first row is line {}", shown(table().delimiter),
                       table().first_row));
    if (table().other_heads > 0)
        ask("table", fmt::format("line {} names the columns otherwise than the lines above the first row: "
                                 "cut the file in two there, and take each in by itself",
                                 table().other_heads));
    find_times();
    find_dates();
    find_quantity();
    find_rows();
    if (no_clock_) look_at_days();
    if (find_value()) {
        find_decimal();
        find_missing();
    }
    find_zone();
    return std::move(guess_);
}

Checked<LoggerGuess> guess_layout(const ByteSource& bytes, const std::string& file, const std::string& site,
                                  const LoggerAnswers& answers, const std::optional<LoggerLayout>& before) {
    auto table = logger_table(bytes);
    if (table.first_row == 0) return no_table(bytes, file);
    return LoggerGuesser(std::move(table), site, answers, before).run();
}

}  // namespace spoilbook
