// SPDX-License-Identifier: GPL-3.0-or-later
// Where things stand on the turbidity chart; the same for drawing and for finding what was pressed.
#pragma once

#include <QRectF>
#include <algorithm>
#include <vector>

#include "forms/consent/turbidity_chart.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {

struct TurbidityFrame {
    QRectF key, bars, plot, digging, releasing, times;
    Period window{Instant{0}, Instant{1}};
    double most = 1, step = 1;  ///< of the axis up, from 0

    [[nodiscard]] double x(Instant at) const {
        return plot.left() + plot.width() * double(at - window.from) / double(window.to - window.from);
    }
    [[nodiscard]] double y(double value) const { return plot.bottom() - plot.height() * value / most; }
    /// Above the axis: drawn at its upper edge.
    [[nodiscard]] double y_cut(double value) const { return std::max(plot.top() + 2, y(value)); }
    [[nodiscard]] QRectF bar(const EventBar& event) const;
};

inline constexpr int bar_height = 15;
inline constexpr int strip_height = 13;
inline constexpr int axis_width = 74;
inline constexpr double key_line_height = 2.5 * grid;

TurbidityFrame turbidity_frame(const QRectF& place, const TurbidityDrawn& drawn, Period window);

/// A time on the axis with its words.
struct TimeTick {
    Instant at;
    QString text;
};

/// Round times of the zone, as many as fit `most`: hours, days, months or years.
std::vector<TimeTick> time_ticks(Period window, int most, const Zone& zone, const QLocale& locale);

}  // namespace spoilbook::form
