// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/pace_words.h"

#include <QCoreApplication>
#include <QDate>
#include <algorithm>
#include <cmath>

#include "forms/shared/number_typed.h"
#include "forms/works/forecast_chart.h"
#include "forms/works/say.h"
#include "model/unit/calendar.h"

namespace spoilbook::form {
namespace {

constexpr std::size_t most_bars = 10;

QString tr(const char* text) {
    return QCoreApplication::translate("Pace", text);
}

QString percent(double share, const QLocale& locale) {
    return number_shown(100 * share, 1, locale) + QStringLiteral(" %");
}

LyingBar bar_of(const QString& name, double hours, double share, bool hatched, const QLocale& locale) {
    return {name, hours, tr("%1 h, %2 %").arg(number_shown(hours, 1, locale), number_shown(share, 1, locale)),
            hatched};
}

}  // namespace

QString pace_sentence(const HoursRow& all, const Pace& pace, const QLocale& locale) {
    if (all.shift_h <= 0) return tr("No shift was opened by the as-at.");
    QString said = tr("Of %1 shift hours %2 were digging.")
                       .arg(number_shown(all.shift_h, 0, locale), percent(all.share(all.digging_h), locale));
    if (!all.causes.empty()) {
        const CauseHours& most = all.causes.front();
        said +=
            u' ' + tr("Most was lost to %1: %2.")
                       .arg(most.cause.empty() ? tr("no cause recorded") : QString::fromStdString(most.cause),
                            percent(all.share(most.hours), locale));
    }
    said += u' ' + tr("%1 h are not accounted for.").arg(number_shown(all.not_accounted_h, 1, locale));
    if (const auto governs = pace.governs())
        said += u' ' + tr("Loads are held up by %1.").arg(governs_shown(*governs));
    return said;
}

std::vector<LyingBar> cause_bars(const std::vector<CauseRow>& rows, const QLocale& locale) {
    std::vector<LyingBar> bars;
    double hours = 0;
    double share = 0;
    for (const CauseRow& row : rows) {
        if (!row.is_delay) continue;
        if (bars.size() < most_bars) {
            bars.push_back(bar_of(row.cause, row.hours, row.share, false, locale));
        } else {
            hours += row.hours;
            share += row.share;
        }
    }
    if (hours > 0) bars.push_back(bar_of(tr("all others"), hours, share, true, locale));
    if (!rows.empty() && rows.back().hours > 0)
        bars.push_back(bar_of(rows.back().cause, rows.back().hours, rows.back().share, true, locale));
    return bars;
}

ChartData pace_chart(const std::vector<PaceRow>& weeks, const Zone& zone, const QLocale& locale) {
    ChartData data;
    data.title = tr("In-situ m³ an operating hour, by week");
    data.empty_text = tr("No week with loads and digging by the as-at.");
    ChartSeries rate{tr("m³ an operating hour"), SeriesKind::line, 1, {}};
    ChartSeries band{tr("± u"), SeriesKind::band, 1, {}};
    double most = 0;
    // The rows stand newest first.
    for (auto week = weeks.rbegin(); week != weeks.rend(); ++week) {
        if (!week->rate) continue;
        const double x = chart_x(zone.day_of(week->from));
        rate.points.emplace_back(x, *week->rate);
        band.points.emplace_back(x, *week->rate - *week->rate_u);
        band.upper.emplace_back(x, *week->rate + *week->rate_u);
        most = std::max(most, *week->rate + *week->rate_u);
    }
    if (rate.points.empty()) return data;
    const double first = rate.points.front().x();
    const double last = std::max(rate.points.back().x(), first + 7);
    data.x = ChartAxis{tr("week from"), first, last};
    const auto day_at = [](double x) { return plus_days(Day{1970, 1, 1}, int(x)); };
    const Day begin = day_at(first);
    const int months = int((last - first) / 30) + 1;
    const int step = std::max(1, (months + 5) / 6);
    for (Day day = plus_months({begin.year, begin.month, 1}, 1); chart_x(day) <= last;
         day = plus_months(day, step))
        data.x.ticks.push_back(
            {chart_x(day), locale.toString(QDate(day.year, day.month, day.day), QStringLiteral("MMM yyyy"))});
    data.x.words = [locale, day_at](double x) { return day_shown(day_at(x), locale); };
    data.y = ChartAxis{tr("in situ, m³ an operating hour"), 0, std::ceil(most / 20) * 20};
    data.series = {band, rate};
    const auto [low, high] =
        std::minmax_element(rate.points.begin(), rate.points.end(),
                            [](const QPointF& a, const QPointF& b) { return a.y() < b.y(); });
    data.sentence = tr("Between %1 and %2 m³ in the weeks with digging.")
                        .arg(number_shown(low->y(), 0, locale), number_shown(high->y(), 0, locale));
    return data;
}

QString governs_shown(Governs governs) {
    if (governs == Governs::dredger) return tr("the dredger");
    return governs == Governs::tugs ? tr("the tugs") : tr("the barges");
}

FigureText rate_figure(const ProductivityRow& all, const QLocale& locale) {
    const auto rate = all.per_operating_hour();
    FigureText text{tr("An operating hour"), {}, tr("m³/h"), {}, tr("in situ, by all loads that are known")};
    if (!rate || all.loads.empty()) return text;
    text.value = rounded_down(rate->value, 1, locale);
    text.plus_minus = rounded_up(rate->u(), 1, locale);
    if (all.unknown > 0) text.basis = tr("in situ, %1 loads unknown").arg(all.unknown);
    return text;
}

FigureText shift_figure(const ProductivityRow& all, const QLocale& locale) {
    const auto rate = all.per_shift();
    FigureText text{tr("A shift"), {}, tr("m³"), {}, tr("in situ, over %1 shifts").arg(all.opened)};
    if (!rate || all.loads.empty()) return text;
    text.value = rounded_down(rate->value, 0, locale);
    text.plus_minus = rounded_up(rate->u(), 0, locale);
    return text;
}

FigureText positioning_figure(const std::optional<Spread>& steps, const QLocale& locale) {
    FigureText text{tr("Positioning"), {}, tr("min"), {}, tr("no step is logged")};
    if (!steps) return text;
    text.value = rounded_up(steps->median, 0, locale);
    text.basis = tr("median of %1; 8 in 10 from %2 to %3 min")
                     .arg(steps->n)
                     .arg(number_shown(steps->p10, 0, locale), number_shown(steps->p90, 0, locale));
    return text;
}

FigureText least_figure(const Pace& pace, const QLocale& locale) {
    FigureText text{tr("Loads an hour at most"), {}, {}, {}, tr("the log does not tell")};
    const auto least = pace.least();
    if (!least) return text;
    const auto shown = [&](double value) { return number_shown(value, 2, locale); };
    text.value = rounded_down(*least, 2, locale);
    text.basis = tr("dredger %1, %2 tugs %3, %4 barges %5; logged %6")
                     .arg(shown(*pace.by_dredger))
                     .arg(pace.tugs)
                     .arg(shown(*pace.by_tugs))
                     .arg(pace.barges)
                     .arg(shown(*pace.by_barges), shown(pace.measured.value_or(0)));
    return text;
}

}  // namespace spoilbook::form
