// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/logger_table.h"

#include <algorithm>
#include <array>
#include <cctype>

#include "model/turbidity/logger_count.h"
#include "model/turbidity/logger_lines.h"
#include "model/turbidity/logger_shape.h"
#include "model/turbidity/logger_time.h"

namespace spoilbook {

namespace {

constexpr std::size_t most_values = 60;

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return text;
}

void look_at_date(const LoggerTime& time, LoggerColumn& column) {
    ++column.dates;
    if (time.year_first || time.month_named) {
        ++column.sure_dates;
        return;
    }
    column.first_over_12 += time.first > 12 ? 1 : 0;
    column.second_over_12 += time.second > 12 ? 1 : 0;
}

/// "1,234" may be a thousand or a decimal; "0,234" and "12,3" are decimals.
bool no_thousands(std::string_view text) {
    const std::size_t comma = text.find(',');
    const std::size_t digits = text.find_first_of("123456789");
    return text.size() - comma != 4 || digits == std::string_view::npos || digits > comma;
}

void look_at(std::string_view text, LoggerColumn& column) {
    if (text.empty()) {
        ++column.blank;
        return;
    }
    if (!column.many) {
        ++column.values[std::string(text)];
        column.many = column.values.size() > most_values;
    }
    const bool proven = grouped_number(text, ',') && !logger_number(text, '.');
    const bool number =
        logger_number(text, '.') || (grouped_number(text, '.') && text.find('.') != text.npos);
    const bool comma = !number && (logger_number(text, ',') || proven);
    if (number || comma) {
        ++(number ? column.numbers : column.comma_numbers);
        column.point_marks += !comma && text.find('.') != std::string_view::npos ? 1 : 0;
        column.comma_marks += comma ? 1 : 0;
        column.not_thousands += comma && (proven || no_thousands(text)) ? 1 : 0;
    }
    if (const auto time = number ? std::nullopt : logger_time(text)) {
        column.offsets += time->offset_s ? 1 : 0;
        if (time->has_date) return look_at_date(*time, column);
        ++column.clocks;
    } else if (number && text.size() >= 8) {
        if (const auto compact = logger_time(text); compact && compact->has_date)
            look_at_date(*compact, column);
    }
    const bool odd = (!number && !comma) || is_missing_code(text);
    if (odd && column.texts.size() < most_values) ++column.texts[std::string(text)];
}

/// Names the columns by the lines right above the rows that have about as many fields; answers which is the
/// first of those.
std::size_t name_columns(const std::vector<std::string>& above, const LoggerShape& shape,
                         LoggerTable& table) {
    std::vector<std::string_view> fields;
    std::size_t from = above.size();
    while (from > 0 && above.size() - from < 5) {
        split_line(above[from - 1], shape.delimiter, fields);
        if (fields.size() + 1 < shape.fields || fields.size() > shape.fields + 1 || fields.size() < 2) break;
        --from;
    }
    for (std::size_t i = from; i < above.size(); ++i) {
        split_line(above[i], shape.delimiter, fields);
        for (std::size_t k = 0; k < std::min(fields.size(), table.columns.size()); ++k) {
            if (fields[k].empty()) continue;
            auto& column = table.columns[k];
            column.last = shown_text(fields[k]);
            column.name += (column.name.empty() ? "" : " ") + column.last;
        }
    }
    return from;
}

/// Lines above the table that speak of a zone. What the head of a column says goes for that column alone.
void find_zone_lines(const std::vector<std::string>& above, std::size_t heads, LoggerTable& table) {
    for (std::size_t i = 0; i < above.size(); ++i) {
        const auto words = lower(shown_text(above[i]));
        const auto says = [&](const char* word) { return words.find(word) != std::string::npos; };
        if (says("zone") || (i < heads && (says("utc") || says("gmt"))))
            table.zone_lines.push_back(shown_text(above[i]));
    }
}

void read_table(const ByteSource& bytes, const LoggerShape& shape, LoggerTable& table) {
    LoggerLines lines(bytes);
    std::string_view line;
    std::vector<std::string_view> fields;
    std::vector<std::string> above;
    while (lines.next(line)) {
        if (lines.number() < shape.first) {
            above.emplace_back(line);
            continue;
        }
        if (lines.number() == shape.first) find_zone_lines(above, name_columns(above, shape, table), table);
        split_line(line, shape.delimiter, fields);
        if (fields.size() < 2) continue;
        ++table.rows;
        for (std::size_t k = 0; k < std::min(fields.size(), table.columns.size()); ++k)
            look_at(fields[k], table.columns[k]);
        if (shape.counted && shape.column < fields.size())
            table.columns[shape.column].dates += logger_count(fields[shape.column], *shape.counted) ? 1 : 0;
        if (table.first_rows.size() >= 5) continue;
        table.first_rows.emplace_back();
        for (const auto field : fields)
            table.first_rows.back().push_back(shown_text(field));
    }
}

}  // namespace

bool is_missing_code(std::string_view text) {
    static constexpr std::array codes{"-9999",    "-999",     "-99999",  "-9999.0", "-999.0",
                                      "-9999.9",  "-999.9",   "-99.9",   "-99.99",  "-999.99",
                                      "-9999.99", "-9999.00", "-999.00", "-6999",   "-7999",
                                      "-8888",    "9999",     "99999",   "999999"};
    return std::find(codes.begin(), codes.end(), text) != codes.end();
}

LoggerTable logger_table(const ByteSource& bytes) {
    LoggerTable table;
    const LoggerShape best = shape_of(bytes);
    if (best.lines == 0) return table;
    table.counted = best.counted;
    table.delimiter = best.delimiter;
    table.first_row = best.first;
    table.columns.resize(best.fields);
    read_table(bytes, best, table);
    return table;
}

}  // namespace spoilbook
