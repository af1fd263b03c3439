// SPDX-License-Identifier: GPL-3.0-or-later
// What a chart shows, prepared by a pure function and tested without a screen.
#pragma once

#include <QPointF>
#include <QString>
#include <functional>
#include <vector>

namespace spoilbook::form {

/// A mark on an axis with its words. Times are placed by their number and named by who knows the zone.
struct ChartTick {
    double at;
    QString text;
};

struct ChartAxis {
    QString title;  ///< with unit: "in-situ volume, m³"
    double least = 0;
    double most = 1;
    std::vector<ChartTick> ticks = {};          ///< empty: round numbers
    int decimals = 0;                           ///< of those round numbers
    std::function<QString(double)> words = {};  ///< a place on the axis for reading (a time with its zone)
};

/// line: solid or dashed; steps are the caller's points. band: `points` is the lower, `upper` the upper edge.
/// dots: single readings. limit: a level that must not be passed, drawn across with its name on it.
enum class SeriesKind { line, dashed, band, dots, limit };

struct ChartSeries {
    QString name;
    SeriesKind kind = SeriesKind::line;
    int colour = 1;                   ///< 1 to 5, the series tones of the palette
    std::vector<QPointF> points;      ///< x, y in the axes' units
    std::vector<QPointF> upper = {};  ///< of a band
    QString label = {};               ///< written above the last point, in place of an entry of the legend
};

struct ChartData {
    QString title;
    QString sentence;  ///< what it says in one sentence, for who cannot see it; also stands under the title
    ChartAxis x;
    ChartAxis y;
    std::vector<ChartSeries> series;
    QString empty_text;  ///< shown where no series has a point

    [[nodiscard]] bool empty() const;
};

}  // namespace spoilbook::form
