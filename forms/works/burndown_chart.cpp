// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/burndown_chart.h"

#include <QCoreApplication>
#include <QDate>
#include <algorithm>
#include <cmath>

#include "forms/works/say.h"
#include "model/unit/calendar.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("BurndownChart", text);
}

double x_of(Day day) {
    return days_between(day, Day{1970, 1, 1});
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
        ticks.push_back({x_of(first), locale.toString(QDate(first.year, first.month, first.day), form)});
    }
    return ticks;
}

ChartAxis day_axis(const BurnDown& burn, const QLocale& locale) {
    const Day from = burn.days.front().date;
    const Day to = burn.days.back().date;
    ChartAxis axis{tr("end of day"), x_of(from), std::max(x_of(to), x_of(from) + 1)};
    axis.ticks = month_ticks(from, to, locale);
    axis.words = [locale](double x) { return day_shown(plus_days(Day{1970, 1, 1}, int(x)), locale); };
    return axis;
}

// Room above the highest line, up to a round number.
double round_above(double highest) {
    if (highest <= 0) return 1;
    const double power = std::pow(10, std::floor(std::log10(highest)) - 1);
    return std::ceil(highest / (5 * power)) * 5 * power;
}

}  // namespace

ChartData burndown_chart(const BurnDown& burn, Day as_at, const QLocale& locale) {
    ChartData data;
    data.title = tr("Left to dredge");
    data.empty_text = tr("No claim has a planned volume with its days, and no load is closed yet.");
    if (burn.days.empty()) return data;
    ChartSeries plan{tr("planned to be left"), SeriesKind::dashed, 2, {}};
    ChartSeries left{tr("left"), SeriesKind::line, 1, {}};
    double most = 0;
    double least = 0;
    for (const BurnDay& day : burn.days) {
        if (day.plan_m3) plan.points.emplace_back(x_of(day.date), *day.plan_m3);
        if (day.remaining_m3) left.points.emplace_back(x_of(day.date), *day.remaining_m3);
        most = std::max({most, day.plan_m3.value_or(0), day.remaining_m3.value_or(0)});
        least = std::min(least, day.remaining_m3.value_or(0));
    }
    data.x = day_axis(burn, locale);
    data.y = {tr("in-situ volume, m³"), least < 0 ? -round_above(-least) : 0, round_above(most)};
    const ChartSeries target{tr("target"), SeriesKind::line, 4, {{data.x.least, 0}, {data.x.most, 0}}};
    const ChartSeries marker{tr("as at %1").arg(day_shown(as_at, locale)),
                             SeriesKind::dashed,
                             5,
                             {{x_of(as_at), data.y.least}, {x_of(as_at), data.y.most}}};
    data.series = {plan, left, target, marker};
    return data;
}

}  // namespace spoilbook::form
