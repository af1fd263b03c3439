// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace spoilbook {

/// Which number of a date is which; or a time that is one number, counted in seconds or milliseconds since
/// 1970 (UTC) or in a spreadsheet's days; or a year and the day of it, in two columns.
enum class DateOrder { ymd, dmy, mdy, unix_s, unix_ms, excel, doy };

inline bool is_counted(DateOrder order) {
    return order >= DateOrder::unix_s && order <= DateOrder::excel;
}

/// Columns of numbers that make up a time together: a date by its year and either the day of it or month and
/// day, a time of day by its hour. Columns count from 0.
struct TimeParts {
    std::optional<std::size_t> year, month, day, day_of_year, hour, minute, second;
    std::optional<std::size_t> half;  ///< AM or PM, apart from the time of day that it is of

    [[nodiscard]] bool has(std::size_t column) const {
        return column == year || column == month || column == day || column == day_of_year ||
               column == hour || column == minute || column == second || column == half;
    }
    bool operator==(const TimeParts&) const = default;
};

/// How a logger's file is to be read. Columns count from 0, lines from 1.
struct LoggerLayout {
    char delimiter = ',';  ///< ' ': any run of blanks
    std::size_t first_row = 1;
    std::size_t time_column = 0;
    std::optional<std::size_t> clock_column;  ///< where date and time of day stand apart
    TimeParts parts;  ///< where a time is parted further; with a year, `time_column` is that
    std::size_t value_column = 1;
    std::string value_name;
    DateOrder dates = DateOrder::ymd;
    std::string zone;  ///< UTC, +12:00 or an IANA name; blank: each time says its own offset
    char decimal = '.';
    std::vector<std::string> missing;        ///< what stands for a missing value, beside a blank
    std::optional<std::size_t> rows_column;  ///< of several sites in one file: which column tells them apart
    std::string rows_value;                  ///< and what it says in this site's rows
    std::optional<std::size_t>
        quantity_column;         ///< of several quantities in one file: which column names them
    std::string quantity_value;  ///< and what it says where the value is turbidity

    /// Every column that a time is read from, `time_column` first, as a person would read them out.
    [[nodiscard]] std::vector<std::size_t> time_columns() const;
    bool operator==(const LoggerLayout&) const = default;
};

std::string date_order_text(DateOrder order);
std::optional<DateOrder> date_order_named(const std::string& text);

/// One line of JSON, as a book keeps it beside the file; and back. Nothing for text that is none.
std::string layout_text(const LoggerLayout& layout);
std::optional<LoggerLayout> layout_from(const std::string& text);

}  // namespace spoilbook
