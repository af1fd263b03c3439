// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>
#include <fmt/ranges.h>

#include "model/turbidity/logger_guesser.h"
#include "model/turbidity/logger_lines.h"
#include "model/turbidity/logger_parts.h"

namespace spoilbook {

std::string LoggerGuesser::shown_times() const {
    std::vector<std::string> shown;
    for (const std::size_t column : guess_.layout.time_columns())
        shown.push_back(shown_column(column));
    return fmt::format("{}", fmt::join(shown, " and "));
}

/// Whether a day of the year has hours behind its mark: 93.5 is noon.
bool LoggerGuesser::has_day_parts() const {
    const auto& of = guess_.layout.parts.day_of_year;
    return of && column(*of).point_marks + column(*of).comma_marks > 0;
}

/// Hours in a column of their own, beside dates; minutes and seconds may go with them. Hours that were
/// counted on past a day are none.
bool LoggerGuesser::find_hours() {
    std::vector<std::string_view> heads;
    for (const auto& of : table().columns)
        heads.emplace_back(of.last);
    const auto parts = parts_named(heads);
    if (!parts.hour || *parts.hour == layout().time_column) return false;
    const auto& of = column(*parts.hour);
    if (of.many || of.numbers + of.comma_numbers < table().rows || of.latest_bare_hour > 0) return false;
    for (const auto& [text, n] : of.values) {
        const auto hour = logger_number(text, '.');
        if (!hour || *hour < 0 || *hour > 24) return false;
    }
    layout().parts.hour = parts.hour;
    layout().parts.minute = parts.minute;
    layout().parts.second = parts.second;
    return true;
}

/// A name that says so, or a number that no month has so many days for.
bool LoggerGuesser::proves_day_of_year() const {
    const auto& of = column(*guess_.layout.parts.day_of_year);
    if (says_any(of.name, {"doy", "julian", "yday", "jday", "ordinal", "year", "jahr", "jultag"}))
        return true;
    return std::any_of(of.values.begin(), of.values.end(), [](const auto& one) {
        const auto number = logger_number(one.first, '.');
        return number && *number >= 32;
    });
}

/// Of dates that are parted into numbers: what they are, said or asked.
void LoggerGuesser::find_parts() {
    const auto& parts = layout().parts;
    if (!parts.day_of_year) return assume("dates are the year, month and day of three columns");
    layout().dates = DateOrder::doy;
    const std::string told = "dates are a year and the day of it, day 1 being 1 January";
    if (answers_.dates == DateOrder::doy || (table().parts_named && proves_day_of_year()))
        return assume(told);
    if (!answers_.dates && before_ && before_->dates == DateOrder::doy && before_->parts == parts)
        return assume(told + ", as in this site's last file");
    const auto& row = table().first_rows.front();
    ask("dates",
        fmt::format("\"{}\" and \"{}\": are these a year and the day of it?", row[*parts.year],
                    row[*parts.day_of_year]),
        {date_order_text(DateOrder::doy)});
}

}  // namespace spoilbook
