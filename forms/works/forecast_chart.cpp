// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/forecast_chart.h"

#include <QCoreApplication>
#include <algorithm>
#include <map>

#include "forms/works/say.h"
#include "model/unit/calendar.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Forecast", text);
}

constexpr int near_days = 14;

// The last day that is near enough to the target to be drawn.
std::optional<Day> near_target(const Forecast& forecast) {
    if (forecast.fan.empty()) return std::nullopt;
    return plus_days(forecast.fan.back().date, near_days);
}

}  // namespace

double chart_x(Day day) {
    return days_between(day, Day{1970, 1, 1});
}

std::vector<ChartSeries> forecast_fan(const Forecast& forecast) {
    if (forecast.fan.empty()) return {};
    ChartSeries band{tr("forecast, 1 in 10 to 9 in 10"), SeriesKind::band, 3, {}, {}};
    ChartSeries middle{tr("forecast, even"), SeriesKind::line, 3, {}};
    for (const FanDay& day : forecast.fan) {
        band.points.emplace_back(chart_x(day.date), day.p10);
        band.upper.emplace_back(chart_x(day.date), day.p90);
        middle.points.emplace_back(chart_x(day.date), day.p50);
    }
    return {band, middle};
}

ChartSeries even_line(const Forecast& forecast, const QString& name) {
    ChartSeries line{name, SeriesKind::dashed, 3, {}};
    for (const FanDay& day : forecast.fan)
        line.points.emplace_back(chart_x(day.date), day.p50);
    return line;
}

std::optional<Day> forecast_end(const Forecast& forecast) {
    const auto near = near_target(forecast);
    if (!near) return std::nullopt;
    Day end = forecast.fan.back().date;
    const auto reach = [&](const std::optional<Day>& day) {
        if (day && *day <= *near) end = std::max(end, *day);
    };
    for (const LimitForecast& limit : forecast.limits)
        reach(limit.dates.p50);
    reach(forecast.season_closes);
    return end;
}

std::vector<ChartSeries> limit_ticks(const Forecast& forecast, double most, const QLocale& locale) {
    const auto near = near_target(forecast);
    if (!near) return {};
    // Limits of one day share a tick.
    std::map<int, std::pair<Day, QStringList>> ticks;
    const auto add = [&](Day day, const QString& word) {
        auto& tick = ticks[int(chart_x(day))];
        tick.first = day;
        tick.second << word;
    };
    for (const LimitForecast& limit : forecast.limits) {
        if (limit.dates.p50 && *limit.dates.p50 <= *near) add(*limit.dates.p50, limit_name(limit.state));
    }
    std::vector<ChartSeries> series;
    for (const auto& [x, tick] : ticks) {
        const QString names = tick.second.join(QStringLiteral(", "));
        const double height = most * (0.9 - 0.15 * double(series.size() % 4));
        series.push_back({tr("condition %1, even on %2").arg(names, day_shown(tick.first, locale)),
                          SeriesKind::limit,
                          1,
                          {{double(x), 0}, {double(x), height}},
                          {},
                          names});
    }
    if (forecast.season_closes && *forecast.season_closes <= *near) {
        const double x = chart_x(*forecast.season_closes);
        series.push_back({tr("season's end, %1").arg(day_shown(*forecast.season_closes, locale)),
                          SeriesKind::limit,
                          1,
                          {{x, 0}, {x, most * 0.97}},
                          {},
                          tr("season's end")});
    }
    return series;
}

}  // namespace spoilbook::form
