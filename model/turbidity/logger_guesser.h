// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <initializer_list>

#include "model/turbidity/logger_guess.h"

namespace spoilbook {

/// One guess at how a file is to be read, step by step: what proves itself is assumed and said, what does not
/// is asked. Used by guess_layout alone; its parts lie in logger_guess*.cpp.
class LoggerGuesser {
 public:
    /// What is handed in must outlive it.
    LoggerGuesser(LoggerTable table, const std::string& site, const LoggerAnswers& answers,
                  const std::optional<LoggerLayout>& before)
        : site_(site), answers_(answers), before_(before) {
        guess_.table = std::move(table);
    }
    LoggerGuess run();

 private:
    LoggerLayout& layout() { return guess_.layout; }
    [[nodiscard]] const LoggerTable& table() const { return guess_.table; }
    [[nodiscard]] const LoggerColumn& column(std::size_t k) const { return table().columns[k]; }
    void assume(std::string text) { guess_.assumed.push_back(std::move(text)); }
    void ask(std::string about, std::string text, std::vector<std::string> choices = {}) {
        guess_.questions.push_back({std::move(about), std::move(text), std::move(choices)});
    }
    [[nodiscard]] std::string shown_column(std::size_t k) const;
    /// Most of what stands in the column.
    [[nodiscard]] bool most(std::size_t n, const LoggerColumn& of) const {
        return 10 * n >= 9 * (table().rows - of.blank) && n > 0;
    }
    [[nodiscard]] bool is_time(std::size_t k) const {
        return k == guess_.layout.time_column || k == guess_.layout.clock_column ||
               guess_.layout.parts.has(k) || column(k).dates > table().rows / 2;
    }

    // logger_guess_time.cpp
    void find_times();
    void find_clock(const std::vector<std::size_t>& clocks);
    // logger_guess_parts.cpp
    [[nodiscard]] std::string shown_times() const;
    [[nodiscard]] bool has_day_parts() const;
    bool find_hours();
    [[nodiscard]] bool proves_day_of_year() const;
    void find_parts();
    // logger_guess_time.cpp
    void look_at_days();
    void find_count(DateOrder likely);
    void find_dates();
    // logger_guess_zone.cpp
    void find_zone();
    bool find_zone_column();
    [[nodiscard]] std::string stated_zone() const;
    void ask_zone();
    // logger_guess_rows.cpp
    void find_quantity();
    void find_rows();
    void choose_rows(std::size_t k);
    // logger_guess_value.cpp
    bool find_value();
    [[nodiscard]] std::vector<std::size_t> value_columns(bool turbid) const;
    [[nodiscard]] std::optional<std::size_t> column_of_site(const std::vector<std::size_t>& among) const;
    bool heads_are_short();
    bool take_value(std::size_t k, const std::string& why);
    bool take_answer();
    void find_decimal();
    void find_missing();

    const std::string& site_;
    const LoggerAnswers& answers_;
    const std::optional<LoggerLayout>& before_;
    bool no_clock_ = false;             ///< rows have no time of day
    std::optional<std::size_t> named_;  ///< the column that names the site
    LoggerGuess guess_;
};

/// ASCII alone.
std::string lower_case(std::string text);
/// Whether one of the words, which are in lower case, stands anywhere in the text.
bool says_any(const std::string& text, std::initializer_list<const char*> words);
/// UTC or GMT as a line has it, with the offset behind it; blank where it says neither.
std::string zone_said_by(const std::string& line);

}  // namespace spoilbook
