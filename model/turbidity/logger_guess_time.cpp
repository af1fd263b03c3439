// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "model/turbidity/logger_guesser.h"
#include "model/turbidity/logger_lines.h"
#include "model/turbidity/logger_parts.h"

namespace spoilbook {

namespace {

/// What reads as hours and minutes without a colon, under a name that says so. Hours and hundredths of them
/// do too where they are halves, and so does what was counted up to a day's hours. `beside`: it stands where
/// a data logger's array, which names nothing, has them.
bool is_bare_clock(const LoggerColumn& of, std::size_t rows, bool beside) {
    constexpr std::uint64_t halves = 1U | (std::uint64_t{1} << 50U);
    const bool named =
        beside || says_any(of.name, {"time", "uhr", "zeit", "heure", "hora", "ora", "hour", "hhmm", "clock"});
    return named && of.bare_clocks == rows && of.latest_bare_hour > 0 &&
           (of.bare_minutes == 1 || (of.bare_minutes & ~halves) != 0);
}

/// The orders under which every date of the column is a day.
std::vector<DateOrder> orders_that_fit(const LoggerColumn& of) {
    std::vector<DateOrder> fit;
    if (of.second_over_12 == 0) fit.push_back(DateOrder::dmy);
    if (of.first_over_12 == 0) fit.push_back(DateOrder::mdy);
    if (of.second_over_12 == 0 && of.third_over_31 == 0 && of.years_last == 0) fit.push_back(DateOrder::ymd);
    return fit;
}

bool holds(const std::vector<DateOrder>& orders, DateOrder order) {
    return std::find(orders.begin(), orders.end(), order) != orders.end();
}

}  // namespace

void LoggerGuesser::find_times() {
    std::vector<std::size_t> dates, clocks;
    for (std::size_t k = 0; k < table().columns.size(); ++k) {
        if (most(column(k).dates, column(k))) dates.push_back(k);
        if (most(column(k).clocks, column(k))) clocks.push_back(k);
    }
    if (dates.empty()) return ask("table", "no column holds dates in most of its rows");
    const auto utc = std::find_if(dates.begin(), dates.end(),
                                  [&](std::size_t k) { return !zone_said_by(column(k).name).empty(); });
    if (utc != dates.end()) std::rotate(dates.begin(), utc, utc + 1);
    const auto year = std::find(dates.begin(), dates.end(), table().parts.year.value_or(dates.front()));
    if (year != dates.end()) std::rotate(dates.begin(), year, year + 1);
    layout().time_column = dates.front();
    const bool with_clock =
        std::any_of(table().first_rows.begin(), table().first_rows.end(), [&](const auto& row) {
            const auto time = dates.front() < row.size() ? logger_time(row[dates.front()]) : std::nullopt;
            return table().counted || (time && time->has_clock);
        });
    layout().parts = table().parts;
    if (!with_clock && !layout().parts.hour && !has_day_parts()) find_clock(clocks);
    for (std::size_t k = 0; k < table().columns.size(); ++k) {
        const auto& said = column(k).values;
        if (!no_clock_ && !said.empty() &&
            std::all_of(said.begin(), said.end(), [](const auto& one) { return is_half_day(one.first); }))
            layout().parts.half = k;
    }
    assume("times stand in " + shown_times());
    for (std::size_t i = 1; i < dates.size(); ++i)
        assume(shown_column(dates[i]) + " holds times too and is not read");
}

void LoggerGuesser::find_clock(const std::vector<std::size_t>& clocks) {
    if (!clocks.empty()) {
        layout().clock_column = clocks.front();
        return;
    }
    for (std::size_t k = 0; k < table().columns.size(); ++k) {
        const bool beside = !table().parts_named && k == *layout().parts.day_of_year + 1;
        const bool part = k == layout().time_column || layout().parts.has(k);
        if (part || !is_bare_clock(column(k), table().rows, beside)) continue;
        layout().clock_column = k;
        return assume(fmt::format("{} holds hours and minutes without a colon", shown_column(k)));
    }
    if (find_hours()) return;
    no_clock_ = true;
}

/// Days alone are readings of days, unless several of one site are of the same.
void LoggerGuesser::look_at_days() {
    const bool several = 10 * column(layout().time_column).same_days > table().rows;
    if (several && !layout().rows_column && !layout().quantity_column)
        return ask(
            "table",
            "no column holds a time of day that reads, and several rows are of one day: write it as 14:30 "
            "in a copy");
    assume("rows have no time of day: each is taken at midnight");
}

/// Of times that are one number: a name that says how they count, or a person.
void LoggerGuesser::find_count(DateOrder likely) {
    const auto& name = column(layout().time_column).name;
    const bool named = likely == DateOrder::excel ? says_any(name, {"excel", "serial"})
                                                  : says_any(name, {"epoch", "unix", "posix", "1970"});
    layout().dates = likely;
    const auto told =
        fmt::format("times are {}", likely == DateOrder::excel    ? "days as a spreadsheet counts them"
                                    : likely == DateOrder::unix_s ? "seconds since 1970 in UTC"
                                                                  : "milliseconds since 1970 in UTC");
    if (answers_.dates == likely || named) return assume(told);
    if (!answers_.dates && before_ && before_->dates == likely)
        return assume(told + ", as in this site's last file");
    ask("dates",
        fmt::format("\"{}\": are these times, and {}?", table().first_rows.front()[layout().time_column],
                    told.substr(10)),
        {date_order_text(likely)});
}

void LoggerGuesser::find_dates() {
    const auto& of = column(layout().time_column);
    if (table().counted) return find_count(*table().counted);
    layout().dates = DateOrder::ymd;
    if (layout().parts.year) return find_parts();
    if (of.dates == of.sure_dates) return;
    if (answers_.dates && answers_.dates < DateOrder::unix_s) {
        layout().dates = *answers_.dates;
        return;
    }
    auto fit = orders_that_fit(of);
    if (fit.empty())
        return ask("dates", "some dates have a first, some a second number over 12: they fit no one order");
    const auto assume_order = [&](DateOrder order, const std::string& why) {
        layout().dates = order;
        assume(fmt::format("dates are {}{}", date_order_text(order), why));
    };
    if (fit.size() == 1) return assume_order(fit.front(), " (a number over 12 proves it)");
    if (before_ && before_->dates != DateOrder::ymd && holds(fit, before_->dates))
        return assume_order(before_->dates, ", as in this site's last file");
    // Years of two digits: from row to row the day changes oftenest.
    const auto others = std::max(of.first_changes, of.second_changes);
    if (holds(fit, DateOrder::ymd) && of.third_changes > others)
        return assume_order(DateOrder::ymd, " (the third number changes oftenest)");
    if (of.third_changes < others) std::erase(fit, DateOrder::ymd);
    if (fit.size() == 1) return assume_order(fit.front(), " (a number over 12, and the last changes seldom)");
    std::vector<std::string> choices;
    for (const auto order : fit)
        choices.push_back(date_order_text(order));
    ask("dates",
        fmt::format("\"{}\": which number is the day, which the month{}? No date proves it",
                    table().first_rows.front()[layout().time_column],
                    holds(fit, DateOrder::ymd) ? ", which the year" : ""),
        choices);
}

}  // namespace spoilbook
