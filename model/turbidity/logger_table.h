// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "model/turbidity/logger_time.h"
#include "model/unit/byte_source.h"

namespace spoilbook {

/// What one column of a logger's table holds, counted over all rows.
struct LoggerColumn {
    std::string name;  ///< all that its header lines say, for people
    std::string last;  ///< what the lowest header line says
    std::size_t blank = 0, dates = 0, clocks = 0, numbers = 0, comma_numbers = 0, offsets = 0;
    std::vector<std::string> heads;  ///< what each of its header lines says, in lower case
    std::size_t sure_dates = 0;      ///< of dates: their text says the order
    std::size_t first_over_12 = 0, second_over_12 = 0, third_over_31 = 0,
                years_last = 0;  ///< of the others: what proves it; `years_last`: the first is no year
    std::size_t first_changes = 0, second_changes = 0, third_changes = 0,
                same_days = 0;       ///< from one row to the next: numbers that change; days that do not
    std::size_t bare_clocks = 0;     ///< 1430 or 14.30
    std::uint64_t bare_minutes = 0;  ///< a bit for each minute that they say
    int latest_bare_hour = 0;
    std::map<std::string, std::size_t> zone_words;  ///< NZST and the like, behind times
    std::size_t point_marks = 0, comma_marks = 0,
                not_thousands = 0;              ///< of numbers: marks, and what proves them
    std::map<std::string, std::size_t> texts;   ///< what is no number, or a code for missing; at most 60
    std::map<std::string, std::size_t> values;  ///< different contents, at most 60 (`many` past that)
    bool many = false;
    std::optional<LoggerTime> last_date;

    [[nodiscard]] std::size_t any_numbers() const { return numbers + comma_numbers; }
};

/// A logger's file taken apart without an assumption on what its columns mean.
struct LoggerTable {
    char delimiter = ',';
    std::size_t first_row = 0;  ///< line of the first row; 0: no table was found
    std::size_t rows = 0;       ///< lines with a time
    std::size_t heads = 0;      ///< columns up to the last that is named; 0: none is
    std::size_t other_heads =
        0;  ///< a line among the rows that names the columns otherwise; 0: there is none
    std::optional<DateOrder> counted;  ///< of times that are one number: likely so
    TimeParts parts;                   ///< of times that are parted: with a year, where they stand
    bool parts_named = true;           ///< heads say so; else the numbers alone look like it
    std::vector<LoggerColumn> columns;
    std::vector<std::string> zone_lines;               ///< lines above the rows that speak of a zone
    std::vector<std::vector<std::string>> first_rows;  ///< the first five, as they stand
};

/// Finds the table: the delimiter and the number of fields that most lines with a date agree on, a
/// date with a time of day before one without; where no line has a date, a column of numbers that rise and
/// are likely times, or columns that are named as, or look like, a year and the day of it.
LoggerTable logger_table(const ByteSource& bytes);

/// Numbers that loggers write for "no value".
bool is_missing_code(std::string_view text);

}  // namespace spoilbook
