// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/window.h"

#include <nlohmann/json.hpp>

#include "model/unit/calendar.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

constexpr std::int64_t close_ms = 2 * ms_per_hour;

Window whole(const Period& period) {
    return {period.from, true, period.to, false};
}

/// (start, t]
Window up_to(Instant start, Instant t) {
    return {start, false, t, true};
}

Window calendar_window(WindowUnit unit, const Zone& zone, Instant t) {
    switch (unit) {
        case WindowUnit::days:
            return whole(day_holding(zone, t));
        case WindowUnit::weeks:
            return whole(iso_week_holding(zone, t));
        case WindowUnit::months:
            return whole(month_holding(zone, t));
        case WindowUnit::years:
            break;
    }
    return whole(year_holding(zone, t));
}

Window rolling_window(WindowUnit unit, int n, const Zone& zone, Instant t) {
    switch (unit) {
        case WindowUnit::days:
            return up_to(shift_days(zone, t, -n), t);
        case WindowUnit::weeks:
            return up_to(shift_days(zone, t, -7 * n), t);
        case WindowUnit::months:
            return up_to(shift_months(zone, t, -n), t);
        case WindowUnit::years:
            break;
    }
    return up_to(shift_months(zone, t, -12 * n), t);
}

/// The campaign that holds t, or the last one begun before it.
std::optional<Window> campaign_window(const Season& season, const std::string& name, Instant t) {
    std::optional<Window> found;
    for (const auto& window : campaign_windows(season, name)) {
        if (*window.start <= t && (!found || *found->start < *window.start)) found = window;
    }
    return found;
}

}  // namespace

MonthDay month_day(const std::string& text) {
    const auto day = text.size() == 5 ? parse_day("2000-" + text) : Checked<Day>(Refusal{});
    return day ? MonthDay{day->month, day->day} : MonthDay{};
}

std::vector<Window> campaign_windows(const Season& season, const std::string& name) {
    std::vector<Window> windows;
    const auto campaigns = nlohmann::json::parse(season.harbour.campaigns, nullptr, false);
    if (!campaigns.is_array()) return windows;
    for (const auto& campaign : campaigns) {
        if (!name.empty() && campaign.value("name", "") != name) continue;
        const auto from = parse_instant_or_day(campaign.value("from", ""), season.zone);
        const auto to = parse_instant_or_day(campaign.value("to", ""), season.zone);
        if (from) windows.push_back({*from, true, to ? std::optional(*to) : std::nullopt, false});
    }
    return windows;
}

std::optional<Window> window_at(const WindowRule& rule, const Consent& consent, const Season& season,
                                Instant t) {
    const Zone& zone = season.zone;
    switch (rule.kind) {
        case WindowKind::term:
            return Window{consent.commences, true, t, true};
        case WindowKind::calendar:
            return calendar_window(rule.unit, zone, t);
        case WindowKind::consent_year: {
            const auto starts = month_day(consent.year_starts);
            return whole(year_from_holding(zone, t, starts.month, starts.day));
        }
        case WindowKind::rolling:
            return rolling_window(rule.unit, rule.n, zone, t);
        case WindowKind::mean:
            return rolling_window(WindowUnit::years, rule.n, zone, t);
        case WindowKind::campaign:
            return campaign_window(season, rule.name, t);
        case WindowKind::phase:
            return Window{rule.from, true, rule.to, false};
        case WindowKind::trip:
            break;
    }
    return Window{std::nullopt, true, t, true};  // a trip's own releases: told apart by the trip, not by time
}

std::optional<Window> WindowFinder::at(Instant t) {
    if (same_ && same_->contains(t)) return up_to(t - length_ms_, t);
    const auto window = window_at(rule_, consent_, season_, t);
    const bool rolls = rule_.kind == WindowKind::rolling || rule_.kind == WindowKind::mean;
    // To know a day's bounds is worth it where more of the day is asked for.
    if (rolls && before_ && t - *before_ < close_ms) remember(t, *window->start);
    before_ = t;
    return window;
}

/// On a day on which no clock is changed a window that begins on such a day begins at the same time of it.
void WindowFinder::remember(Instant t, Instant start) {
    const Period day = day_holding(season_.zone, t);
    const Period first = day_holding(season_.zone, start);
    if (day.to - day.from != ms_per_day || first.to - first.from != ms_per_day) return;
    same_ = day;
    length_ms_ = t - start;
}

}  // namespace spoilbook
