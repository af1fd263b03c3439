// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/burndown_chart.h"

#include <QCoreApplication>
#include <QDate>
#include <algorithm>
#include <cmath>

#include "forms/works/forecast_chart.h"
#include "forms/works/say.h"
#include "model/unit/calendar.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("BurndownChart", text);
}

// A tick at each month's first, thinned so that their words do not meet.
std::vector<ChartTick> month_ticks(Day from, Day to, const QLocale& locale) {
    const int months = (to.year - from.year) * 12 + to.month - from.month;
    const int step = std::max(1, (months + 11) / 12);
    std::vector<ChartTick> ticks;
    for (Day first = plus_months({from.year, from.month, 1}, 1); first <= to;
         first = plus_months(first, step)) {
        const bool says_year = ticks.empty() || first.month <= step;
        const QString form = says_year ? QStringLiteral("MMM yyyy") : QStringLiteral("MMM");
        ticks.push_back({chart_x(first), locale.toString(QDate(first.year, first.month, first.day), form)});
    }
    return ticks;
}

ChartAxis day_axis(Day from, Day to, const QLocale& locale) {
    ChartAxis axis{tr("end of day"), chart_x(from), std::max(chart_x(to), chart_x(from) + 1)};
    axis.ticks = month_ticks(from, to, locale);
    axis.words = [locale](double x) { return day_shown(plus_days(Day{1970, 1, 1}, int(x)), locale); };
    return axis;
}

// The fan is read beside the weeks that it is drawn from; a whole season would press it into a corner.
Day seen_from(const BurnDown& burn, Day as_at, const Forecast* forecast) {
    const Day first = burn.days.front().date;
    constexpr int week = 7;
    return forecast ? std::max(first, plus_days(as_at, -week * forecast->weeks)) : first;
}

// Room above the highest line, up to a round number.
double round_above(double highest) {
    if (highest <= 0) return 1;
    const double power = std::pow(10, std::floor(std::log10(highest)) - 1);
    return std::ceil(highest / (5 * power)) * 5 * power;
}

}  // namespace

ChartData burndown_chart(const BurnDown& burn, Day as_at, const QLocale& locale, const Forecast* forecast,
                         bool whole_season, const Forecast* as_logged) {
    ChartData data;
    data.title = tr("Left to dredge");
    data.empty_text = tr("No claim has a planned volume with its days, and no load is closed yet.");
    if (burn.days.empty()) return data;
    ChartSeries plan{tr("planned to be left"), SeriesKind::dashed, 2, {}};
    ChartSeries left{tr("left"), SeriesKind::line, 1, {}};
    const Day from = seen_from(burn, as_at, whole_season ? nullptr : forecast);
    double most = 0;
    double least = 0;
    for (const BurnDay& day : burn.days) {
        if (day.plan_m3) plan.points.emplace_back(chart_x(day.date), *day.plan_m3);
        if (day.remaining_m3) left.points.emplace_back(chart_x(day.date), *day.remaining_m3);
        if (day.date < from) continue;
        most = std::max({most, day.plan_m3.value_or(0), day.remaining_m3.value_or(0)});
        least = std::min(least, day.remaining_m3.value_or(0));
    }
    Day last = burn.days.back().date;
    if (forecast) {
        last = std::max(last, forecast_end(*forecast).value_or(last));
        for (const FanDay& day : forecast->fan)
            most = std::max(most, day.p90);
        // Of the log as it is only what is in sight: two years would press the rest into a corner.
        if (as_logged) last = std::max(last, as_logged->target.p50.value_or(last));
    }
    data.x = day_axis(from, last, locale);
    data.y = {tr("in-situ volume, m³"), least < 0 ? -round_above(-least) : 0, round_above(most)};
    const ChartSeries target{tr("target"), SeriesKind::line, 4, {{data.x.least, 0}, {data.x.most, 0}}};
    const ChartSeries marker{tr("as at %1").arg(day_shown(as_at, locale)),
                             SeriesKind::dashed,
                             5,
                             {{chart_x(as_at), data.y.least}, {chart_x(as_at), data.y.most}}};
    data.series = {plan, left, target, marker};
    if (!forecast) return data;
    const auto add = [&data](std::vector<ChartSeries> more) {
        data.series.insert(data.series.end(), more.begin(), more.end());
    };
    add(forecast_fan(*forecast));
    if (as_logged) add({even_line(*as_logged, tr("as logged, even"))});
    add(limit_ticks(*forecast, data.y.most, locale));
    return data;
}

}  // namespace spoilbook::form
