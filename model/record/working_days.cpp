// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/working_days.h"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "model/unit/calendar.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

/// "12-20..01-10", or one day: "12-25"
std::optional<std::pair<int, int>> yearly_span(const std::string& text) {
    const auto month_day = [&](std::size_t at) -> std::optional<int> {
        // A leap year, for the sake of 29 February.
        const auto day =
            text.size() < at + 5 ? Checked<Day>(Refusal{}) : parse_day("2024-" + text.substr(at, 5));
        return day ? std::optional(day->month * 100 + day->day) : std::nullopt;
    };
    const auto from = month_day(0);
    const auto to = text.size() > 5 ? month_day(7) : from;
    if (!from || !to) return std::nullopt;
    return std::pair{*from, *to};
}

std::optional<Instant> after_working_days(const Zone& zone, Instant at, double n,
                                          const NotWorking& not_working) {
    constexpr int ten_years = 3653;
    Day day = zone.day_of(at);
    double left = std::ceil(n);
    for (int i = 0; i < ten_years; ++i) {
        if (left <= 0) return zone.day_start(plus_days(day, 1));
        day = plus_days(day, 1);
        if (!not_working.has(day)) left -= 1;
    }
    return std::nullopt;
}

}  // namespace

bool NotWorking::has(Day day) const {
    if (weekends && iso_weekday(day) >= 6) return true;
    if (std::find(dates.begin(), dates.end(), day) != dates.end()) return true;
    const int today = day.month * 100 + day.day;
    return std::any_of(yearly.begin(), yearly.end(), [&](const auto& span) {
        const auto [from, to] = span;
        return from <= to ? from <= today && today <= to : today >= from || today <= to;
    });
}

std::optional<int> NotWorking::listed_to() const {
    const auto last = std::max_element(dates.begin(), dates.end());
    return last == dates.end() ? std::nullopt : std::optional(last->year);
}

NotWorking not_working_from(const std::string& json) {
    NotWorking found;
    const auto body = nlohmann::json::parse(json, nullptr, false);
    if (!body.is_object()) return found;
    found.weekends = body.contains("weekends") && body.at("weekends") == true;
    const auto texts = [&](const char* name) {
        std::vector<std::string> list;
        if (!body.contains(name) || !body.at(name).is_array()) return list;
        for (const auto& text : body.at(name)) {
            if (text.is_string()) list.push_back(text.get<std::string>());
        }
        return list;
    };
    for (const auto& text : texts("dates")) {
        if (const auto day = parse_day(text)) found.dates.push_back(*day);
    }
    for (const auto& text : texts("yearly")) {
        if (const auto span = yearly_span(text)) found.yearly.push_back(*span);
    }
    return found;
}

std::optional<Instant> due_after(const Zone& zone, Instant at, double n, const std::string& unit,
                                 const NotWorking& not_working) {
    const auto hours = [](double count) { return std::llround(count * static_cast<double>(ms_per_hour)); };
    const double whole = std::floor(n);
    if (unit == "hours") return at + hours(n);
    if (unit == "days") return shift_days(zone, at, static_cast<int>(whole)) + hours((n - whole) * 24);
    if (unit == "months") return shift_months(zone, at, static_cast<int>(whole));
    if (unit == "working_days") return after_working_days(zone, at, n, not_working);
    return std::nullopt;
}

}  // namespace spoilbook
