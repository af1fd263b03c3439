// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/chart_draw.h"

#include <QAreaSeries>
#include <QCategoryAxis>
#include <QGraphicsLayout>
#include <QLegend>
#include <QLegendMarker>
#include <QLineSeries>
#include <QLocale>
#include <QScatterSeries>
#include <cmath>

#include "forms/shared/number_typed.h"
#include "forms/shared/round_step.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {
namespace {

Tone series_tone(int colour) {
    const int first = static_cast<int>(Tone::series_1);
    return static_cast<Tone>(first + std::clamp(colour, 1, 5) - 1);
}

QList<QPointF> list(const std::vector<QPointF>& points) {
    return {points.begin(), points.end()};
}

QLineSeries* line_of(const std::vector<QPointF>& points, const QPen& pen, QObject* parent) {
    auto* line = new QLineSeries(parent);
    line->replace(list(points));
    line->setPen(pen);
    return line;
}

QAbstractSeries* make_series(const ChartSeries& series, const Palette& tones, QChart* chart) {
    const QColor colour = tones[series.kind == SeriesKind::limit ? Tone::over : series_tone(series.colour)];
    switch (series.kind) {
        case SeriesKind::dots: {
            auto* dots = new QScatterSeries(chart);
            dots->replace(list(series.points));
            dots->setMarkerSize(7);
            dots->setColor(colour);
            dots->setBorderColor(tones[Tone::surface]);
            return dots;
        }
        case SeriesKind::band: {
            auto* band = new QAreaSeries(line_of(series.upper, Qt::NoPen, chart),
                                         line_of(series.points, Qt::NoPen, chart));
            QColor fill = colour;
            fill.setAlphaF(0.22F);
            band->setBrush(fill);
            band->setPen(QPen(colour, 1, Qt::DotLine));
            return band;
        }
        case SeriesKind::limit:
            return line_of(series.points, QPen(colour, 2, Qt::DashDotLine), chart);
        case SeriesKind::dashed:
            return line_of(series.points, QPen(colour, 2, Qt::DashLine), chart);
        case SeriesKind::line:
            break;
    }
    return line_of(series.points, QPen(colour, 2.25), chart);
}

// Words above the last point of a series; they stand there in place of an entry of the legend.
void label_series(const ChartSeries& series, QAbstractSeries* drawn, const Palette& tones, QChart* chart) {
    auto* place = new QScatterSeries(chart);
    place->append(series.points.back());
    place->setColor(Qt::transparent);
    place->setBorderColor(Qt::transparent);
    place->setPointLabelsFormat(series.label);
    place->setPointLabelsFont(type_font(Step::small, Weight::semibold));
    place->setPointLabelsColor(tones[Tone::text]);
    place->setPointLabelsClipping(false);
    place->setPointLabelsVisible();
    chart->addSeries(place);
    for (QAbstractAxis* axis : drawn->attachedAxes())
        place->attachAxis(axis);
    for (QAbstractSeries* unlisted : {drawn, static_cast<QAbstractSeries*>(place)}) {
        for (QLegendMarker* marker : chart->legend()->markers(unlisted))
            marker->setVisible(false);
    }
}

std::vector<ChartTick> ticks_of(const ChartAxis& axis) {
    if (!axis.ticks.empty() || !(axis.most > axis.least)) return axis.ticks;
    std::vector<ChartTick> ticks;
    const double step = round_step(axis.most - axis.least);
    for (double at = std::ceil(axis.least / step) * step; at <= axis.most + step * 1e-9; at += step) {
        ticks.push_back({at, number_shown(at, axis.decimals, QLocale())});
    }
    return ticks;
}

QAbstractAxis* make_axis(const ChartAxis& axis, const Palette& tones) {
    auto* made = new QCategoryAxis;
    made->setRange(axis.least, axis.most);
    made->setLabelsPosition(QCategoryAxis::AxisLabelsPositionOnValue);
    for (const ChartTick& tick : ticks_of(axis))
        made->append(tick.text, tick.at);
    made->setTitleText(axis.title);
    made->setTitleFont(type_font(Step::small));
    made->setLabelsFont(type_font(Step::small));
    made->setTitleBrush(tones[Tone::quiet]);
    made->setLabelsBrush(tones[Tone::text]);
    made->setLinePen(QPen(tones[Tone::edge], 1));
    made->setGridLinePen(QPen(tones[Tone::line], 1));
    return made;
}

}  // namespace

QChart* make_chart(const ChartData& data, const Palette& tones) {
    auto* chart = new QChart;
    chart->setBackgroundBrush(tones[Tone::surface]);
    chart->setBackgroundRoundness(0);
    chart->setMargins(QMargins(0, 0, 2 * grid, 0));
    chart->layout()->setContentsMargins(0, 0, 0, 0);
    chart->legend()->setAlignment(Qt::AlignTop);
    chart->legend()->setMarkerShape(QLegend::MarkerShapeFromSeries);
    chart->legend()->setFont(type_font(Step::small));
    chart->legend()->setLabelColor(tones[Tone::text]);
    QAbstractAxis* x = make_axis(data.x, tones);
    x->setGridLineVisible(false);
    QAbstractAxis* y = make_axis(data.y, tones);
    chart->addAxis(x, Qt::AlignBottom);
    chart->addAxis(y, Qt::AlignLeft);
    for (const ChartSeries& series : data.series) {
        if (series.points.empty()) continue;
        QAbstractSeries* drawn = make_series(series, tones, chart);
        drawn->setName(series.name);
        chart->addSeries(drawn);
        drawn->attachAxis(x);
        drawn->attachAxis(y);
        if (!series.label.isEmpty()) label_series(series, drawn, tones, chart);
        if (series.kind != SeriesKind::band) continue;
        for (QLegendMarker* marker : chart->legend()->markers(drawn)) {
            marker->setShape(QLegend::MarkerShapeRectangle);
            marker->setPen(QPen(tones[series_tone(series.colour)], 1, Qt::DotLine));
        }
    }
    return chart;
}

std::vector<Column<ChartRow>> chart_columns(const ChartData& data) {
    using Row = ChartRow;
    const QLocale locale;
    // Two places more than the axis shows: the table is where the exact number is looked up.
    const auto y_text = [locale, places = data.y.decimals + 2](double v) {
        return number_shown(v, places, locale);
    };
    const auto upper_text = [y_text](const Row& r) { return r.upper ? y_text(*r.upper) : QString(); };
    return {
        Column<Row>(ChartFrame::tr("Series"), {}, [](const Row& r) { return r.series; }),
        Column<Row>(data.x.title, {}, [](const Row& r) { return r.x_text; }).number([](const Row& r) {
            return std::optional(r.x);
        }),
        Column<Row>(data.y.title, {}, [y_text](const Row& r) { return y_text(r.y); })
            .number([](const Row& r) { return std::optional(r.y); }),
        Column<Row>(ChartFrame::tr("Upper edge"), {}, upper_text).number([](const Row& r) {
            return r.upper;
        }),
    };
}

std::vector<ChartRow> chart_rows(const ChartData& data) {
    std::vector<ChartRow> rows;
    const QLocale locale;
    const auto x_text = [&](double x) {
        for (const ChartTick& tick : data.x.ticks) {
            if (tick.at == x) return tick.text;
        }
        return data.x.words ? data.x.words(x) : number_shown(x, data.x.decimals, locale);
    };
    for (const ChartSeries& series : data.series) {
        for (std::size_t i = 0; i < series.points.size(); ++i) {
            const QPointF& p = series.points[i];
            ChartRow row{series.name, x_text(p.x()), p.x(), p.y(), {}};
            if (i < series.upper.size()) row.upper = series.upper[i].y();
            rows.push_back(std::move(row));
        }
    }
    return rows;
}

}  // namespace spoilbook::form
