// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/turbidity_frame.h"

#include <QDate>
#include <QLocale>
#include <algorithm>
#include <cmath>

#include "forms/consent/turbidity_lines.h"
#include "forms/shared/round_step.h"
#include "forms/shared/time_typed.h"
#include "forms/shared/type_scale.h"
#include "model/unit/calendar.h"

namespace spoilbook::form {
namespace {

/// What must be seen: readings that count, statistics and levels. Spikes that failed may reach beyond.
double highest(const TurbidityDrawn& drawn) {
    double most = 0;
    for (const ViewSite& site : drawn.view.sites) {
        double raw = 0;
        for (const ViewColumn& column : site.columns) {
            most = std::max(most, column.sum.high.value_or(0));
            raw = std::max(raw, column.sum.raw_high.value_or(0));
        }
        for (const ViewTrace& trace : site.traces) {
            for (const ViewStep& step : trace.steps)
                most = std::max({most, step.statistic_high.value_or(0), step.level_high.value_or(0)});
        }
        if (most == 0) most = raw;
    }
    return most;
}

QString date_words(Day day, const QLocale& locale, const char* form) {
    return locale.toString(QDate(day.year, day.month, day.day), QString::fromLatin1(form));
}

std::vector<TimeTick> hour_ticks(Period window, int hours, const Zone& zone, const QLocale& locale) {
    std::vector<TimeTick> ticks;
    for (Day day = zone.day_of(window.from); zone.day_start(day) < window.to; day = plus_days(day, 1)) {
        for (int hour = 0; hour < 24; hour += hours) {
            const Instant at = zone.instant({day, hour});
            if (!window.contains(at)) continue;
            const bool says_day = hour == 0 || ticks.empty();
            ticks.push_back({at, says_day ? date_words(day, locale, "d MMM") + u' ' + time_shown(at, zone)
                                          : time_shown(at, zone)});
        }
    }
    return ticks;
}

std::vector<TimeTick> day_ticks(Period window, int days, const Zone& zone, const QLocale& locale) {
    std::vector<TimeTick> ticks;
    Day day = zone.day_of(window.from);
    // From a fixed day on, so that ticks do not jump while one pans.
    day = plus_days(day, -(days_between(day, {2000, 1, 1}) % days));
    for (; zone.day_start(day) < window.to; day = plus_days(day, days)) {
        const Instant at = zone.day_start(day);
        if (window.contains(at))
            ticks.push_back({at, date_words(day, locale, ticks.empty() ? "d MMM yyyy" : "d MMM")});
    }
    return ticks;
}

std::vector<TimeTick> month_ticks(Period window, int months, const Zone& zone, const QLocale& locale) {
    std::vector<TimeTick> ticks;
    const Day first = zone.day_of(window.from);
    Day day{first.year, (first.month - 1) / months * months + 1, 1};
    if (months > 12) day = {first.year - first.year % (months / 12), 1, 1};
    for (; zone.day_start(day) < window.to; day = plus_months(day, months)) {
        const Instant at = zone.day_start(day);
        if (!window.contains(at)) continue;
        const bool says_year = ticks.empty() || day.month <= months;
        ticks.push_back({at, date_words(day, locale,
                                        months >= 12 ? "yyyy"
                                        : says_year  ? "MMM yyyy"
                                                     : "MMM")});
    }
    return ticks;
}

}  // namespace

std::vector<TimeTick> time_ticks(Period window, int most, const Zone& zone, const QLocale& locale) {
    const double hours = double(window.to - window.from) / double(ms_per_hour);
    const auto fits = [&](double step_hours) { return hours / step_hours <= most; };
    for (const int step : {1, 2, 3, 6, 12}) {
        if (fits(step)) return hour_ticks(window, step, zone, locale);
    }
    for (const int step : {1, 2, 4, 7, 14}) {
        if (fits(24 * step)) return day_ticks(window, step, zone, locale);
    }
    for (const int step : {1, 2, 3, 6, 12, 24, 60, 120}) {
        if (fits(730.0 * step)) return month_ticks(window, step, zone, locale);
    }
    return month_ticks(window, 600, zone, locale);
}

QRectF TurbidityFrame::bar(const EventBar& event) const {
    const double left = std::max(plot.left(), x(event.span.from));
    const double right = std::min(plot.right(), x(event.span.to));
    if (right < plot.left() || left > plot.right()) return {};
    // Short events of a wide window are still seen and hit.
    return {left, bars.top() + double(event.row) * bar_height, std::max(right - left, 6.0), bar_height - 3.0};
}

TurbidityFrame turbidity_frame(const QRectF& place, const TurbidityDrawn& drawn, Period window) {
    TurbidityFrame frame;
    frame.window = window;
    std::size_t rows = 0;
    for (const EventBar& event : drawn.events)
        rows = std::max(rows, event.row + 1);
    const double left = place.left() + axis_width;
    const double right = place.right() - 2 * grid;
    const auto line = [&](double top, double height) { return QRectF(left, top, right - left, height); };
    const auto key = key_parts(drawn.view, right - left);
    frame.key = line(place.top(), key.empty() ? key_line_height : key.back().place.bottom());
    frame.bars = line(frame.key.bottom() + half_grid, double(rows) * bar_height);
    frame.times = line(place.bottom() - 2.5 * grid, 2.5 * grid);
    frame.releasing = line(frame.times.top() - strip_height - 2, strip_height);
    frame.digging = line(frame.releasing.top() - strip_height - 2, strip_height);
    frame.plot = line(frame.bars.bottom() + 2, frame.digging.top() - frame.bars.bottom() - half_grid - 2);
    const double most = std::max(highest(drawn) * 1.05, 1e-3);
    frame.step = round_step(most, 4);
    frame.most = std::ceil(most / frame.step) * frame.step;
    return frame;
}

}  // namespace spoilbook::form
