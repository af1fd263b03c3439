// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/logger_table.h"

#include <algorithm>
#include <array>
#include <cctype>

#include "model/turbidity/logger_count.h"
#include "model/turbidity/logger_lines.h"
#include "model/turbidity/logger_parts.h"
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
    if (!time.zone_word.empty() && column.zone_words.size() < most_values)
        ++column.zone_words[std::string(time.zone_word)];
    if (column.last_date) {
        const auto& last = *column.last_date;
        column.first_changes += time.first != last.first ? 1 : 0;
        column.second_changes += time.second != last.second ? 1 : 0;
        column.third_changes += time.third != last.third ? 1 : 0;
        column.same_days +=
            time.first == last.first && time.second == last.second && time.third == last.third ? 1 : 0;
    }
    column.last_date = time;
    column.last_date->zone_word = {};  // it lies in the row's text
    if (time.year_first || time.month_named) {
        ++column.sure_dates;
        return;
    }
    column.first_over_12 += time.first > 12 ? 1 : 0;
    column.second_over_12 += time.second > 12 ? 1 : 0;
    column.third_over_31 += time.third > 31 ? 1 : 0;
    column.years_last += !time.first_padded ? 1 : 0;
}

void look_at_clock(const LoggerTime& time, LoggerColumn& column) {
    ++column.bare_clocks;
    column.bare_minutes |= std::uint64_t{1} << static_cast<unsigned>(time.minute);
    column.latest_bare_hour = std::max(column.latest_bare_hour, time.hour);
}

/// No turbidity, whatever the sensor: a code, of which there are more than a list can hold.
bool is_out_of_reach(double value) {
    return value <= -90 || value > 1e6;
}

/// "1,234" may be a thousand or a decimal; "0,234" and "12,3" are decimals.
bool no_thousands(std::string_view text) {
    const std::size_t comma = text.find(',');
    const std::size_t digits = text.find_first_of("123456789");
    return text.size() - comma != 4 || digits == std::string_view::npos || digits > comma;
}

/// 20260403: a day and a number.
bool is_compact(std::string_view text) {
    return text.find_first_not_of("0123456789") == std::string_view::npos;
}

/// `date`: what the text was found to be already.
void look_at(std::string_view text, const std::optional<LoggerTime>& date, LoggerColumn& column) {
    if (text.empty()) {
        ++column.blank;
        return;
    }
    if (!column.many) {
        ++column.values[std::string(text)];
        column.many = column.values.size() > most_values;
    }
    const auto pointed = date && !is_compact(text) ? std::nullopt : logger_number(text, '.');
    const bool marked = !pointed && text.find_first_of(",.") != std::string_view::npos;
    const bool proven = marked && grouped_number(text, ',');
    const bool number = pointed || (marked && grouped_number(text, '.') && text.find('.') != text.npos);
    const auto commaed = marked && !number ? logger_number(text, ',') : std::nullopt;
    const bool comma = commaed || (marked && !number && proven);
    if (number || comma) {
        ++(number ? column.numbers : column.comma_numbers);
        column.point_marks += !comma && text.find('.') != std::string_view::npos ? 1 : 0;
        column.comma_marks += comma ? 1 : 0;
        column.not_thousands += comma && (proven || no_thousands(text)) ? 1 : 0;
    }
    auto time = date;
    if (!time && (!number || text.size() >= 8)) time = logger_time(text);
    if (time) {
        column.offsets += time->offset_s ? 1 : 0;
        if (time->has_date) look_at_date(*time, column);
        if (time->has_date && !number) return;
        column.clocks += time->has_date ? 0 : 1;
    } else if (const auto clock = bare_clock(text)) {
        look_at_clock(*clock, column);
    }
    const auto value = pointed ? pointed : commaed;
    const bool odd = (!number && !comma) || is_missing_code(text) || (value && is_out_of_reach(*value));
    if (odd && column.texts.size() < most_values) ++column.texts[std::string(text)];
}

/// The day of a row, and where it stands; looks first where it stood before.
std::optional<LoggerTime> day_in(const std::vector<std::string_view>& fields, std::size_t& column) {
    const auto at = [&](std::size_t k) {
        auto time = logger_time(fields[k]);
        return time && time->has_date ? time : std::nullopt;
    };
    if (column < fields.size()) {
        if (auto time = at(column)) return time;
    }
    for (std::size_t k = 0; k < fields.size(); ++k) {
        if (k == column) continue;
        if (auto time = at(k)) {
            column = k;
            return time;
        }
    }
    return std::nullopt;
}

/// Whether a line among the rows names a column as another one is named, and not as this one.
bool names_otherwise(const std::vector<std::string_view>& fields, const LoggerTable& table) {
    const auto has = [](const LoggerColumn& column, const std::string& head) {
        return std::find(column.heads.begin(), column.heads.end(), head) != column.heads.end();
    };
    for (std::size_t k = 0; k < std::min(fields.size(), table.columns.size()); ++k) {
        const auto head = lower(shown_text(fields[k]));
        if (head.empty() || has(table.columns[k], head)) continue;
        if (std::any_of(table.columns.begin(), table.columns.end(),
                        [&](const auto& other) { return has(other, head); }))
            return true;
    }
    return false;
}

/// Names the columns by the lines right above the rows that have about as many fields; answers which is the
/// first of those.
std::size_t name_columns(const std::vector<std::string>& above, const LoggerShape& shape,
                         LoggerTable& table) {
    std::vector<std::string_view> fields;
    std::size_t from = above.size();
    while (from > 0 && above.size() - from < 5) {
        split_heads(above[from - 1], shape.delimiter, fields);
        if (fields.size() + 1 < shape.fields || fields.size() > shape.fields + 1 || fields.size() < 2) break;
        --from;
    }
    for (std::size_t i = from; i < above.size(); ++i) {
        split_heads(above[i], shape.delimiter, fields);
        for (std::size_t k = 0; k < std::min(fields.size(), table.columns.size()); ++k) {
            if (fields[k].empty()) continue;
            auto& column = table.columns[k];
            column.last = shown_text(fields[k]);
            column.heads.push_back(lower(column.last));
            table.heads = std::max(table.heads, k + 1);
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
    std::size_t day_column = shape.parts.year.value_or(shape.fields);
    while (lines.next(line)) {
        if (lines.number() < shape.first) {
            above.emplace_back(line);
            continue;
        }
        if (lines.number() == shape.first) find_zone_lines(above, name_columns(above, shape, table), table);
        split_line(line, shape.delimiter, fields);
        if (fields.size() < 2) continue;
        const auto day = shape.counted      ? std::nullopt
                         : shape.parts.year ? parts_time(fields, shape.parts)
                                            : day_in(fields, day_column);
        const bool counts = shape.counted && shape.column < fields.size() &&
                            logger_count(fields[shape.column], *shape.counted);
        if (!day && !counts) {  // a footer, or the heads again
            if (table.other_heads == 0 && names_otherwise(fields, table)) table.other_heads = lines.number();
            continue;
        }
        ++table.rows;
        for (std::size_t k = 0; k < std::min(fields.size(), table.columns.size()); ++k)
            look_at(fields[k], day && k == day_column ? day : std::nullopt, table.columns[k]);
        if (counts) ++table.columns[shape.column].dates;
        if (table.first_rows.size() >= 5) continue;
        table.first_rows.emplace_back();
        for (const auto field : fields)
            table.first_rows.back().push_back(shown_text(field));
    }
}

}  // namespace

bool is_missing_code(std::string_view text) {
    using Code = std::string_view;
    if (text.size() < 4 || (text.front() != '-' && text.front() != '9')) return false;
    static constexpr std::array<Code, 19> codes{"-9999",    "-999",     "-99999",  "-9999.0", "-999.0",
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
    table.parts = best.parts;
    table.parts_named = best.parts_named;
    table.delimiter = best.delimiter;
    table.first_row = best.first;
    table.columns.resize(best.fields);
    read_table(bytes, best, table);
    return table;
}

}  // namespace spoilbook
