// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/lying_bars.h"

#include <QPainter>
#include <algorithm>

#include "forms/shared/type_scale.h"

namespace spoilbook::form {
namespace {

constexpr double text_height = 2 * grid + half_grid;
constexpr double widest_name = 20 * grid;

}  // namespace

LyingBars::LyingBars(const QString& title, QWidget* parent) : Drawing(title, parent) {
    setMinimumSize(40 * grid, 20 * grid);
}

void LyingBars::show_bars(std::vector<LyingBar> bars, const QString& axis, const QString& empty_text) {
    bars_ = std::move(bars);
    axis_ = axis;
    empty_text_ = empty_text;
    QStringList said;
    for (const LyingBar& bar : bars_)
        said << bar.name + u' ' + bar.value_text;
    setAccessibleDescription(said.join(QStringLiteral("; ")));
    update();
}

void LyingBars::draw(QPainter& painter, const QRectF& place, const Palette& tones) const {
    painter.setFont(type_font(Step::small));
    painter.setPen(tones[Tone::quiet]);
    if (bars_.empty()) {
        painter.drawText(place, Qt::AlignCenter | Qt::TextWordWrap, empty_text_);
        return;
    }
    painter.drawText(place, Qt::AlignTop | Qt::AlignLeft, axis_);
    const QFontMetricsF metrics(painter.font());
    double name_width = 0;
    double value_width = 0;
    double most = 0;
    for (const LyingBar& bar : bars_) {
        name_width = std::max(name_width, metrics.horizontalAdvance(bar.name));
        value_width = std::max(value_width, metrics.horizontalAdvance(bar.value_text));
        most = std::max(most, bar.value);
    }
    name_width = std::min(name_width, widest_name) + grid;
    const QRectF plot = place.adjusted(name_width, text_height + half_grid, -value_width - grid, -grid);
    const double slot = std::min(plot.height() / double(bars_.size()), 4.0 * grid);
    for (std::size_t i = 0; i < bars_.size(); ++i) {
        const LyingBar& bar = bars_[i];
        const double top = plot.top() + slot * double(i);
        const double length = most > 0 ? plot.width() * bar.value / most : 0;
        const QRectF body(plot.left(), top + slot * 0.18, length, slot * 0.64);
        QColor fill = tones[bar.hatched ? Tone::series_2 : Tone::series_1];
        const QColor edge = fill;
        // By night a large bright field would blind: the outline carries the bar.
        if (tones.light() == Light::night) fill.setAlphaF(0.3F);
        painter.fillRect(body, fill);
        if (bar.hatched) painter.fillRect(body, QBrush(tones[Tone::surface], Qt::BDiagPattern));
        painter.setPen(QPen(edge, 1));
        painter.drawRect(body);
        painter.setPen(tones[Tone::text]);
        painter.drawText(QRectF(place.left(), top, name_width - grid, slot),
                         Qt::AlignVCenter | Qt::AlignRight,
                         metrics.elidedText(bar.name, Qt::ElideRight, name_width - grid));
        painter.drawText(QRectF(body.right() + half_grid, top, value_width + grid, slot),
                         Qt::AlignVCenter | Qt::AlignLeft, bar.value_text);
    }
    painter.setPen(QPen(tones[Tone::edge], 1));
    painter.drawLine(plot.topLeft(), QPointF(plot.left(), plot.top() + slot * double(bars_.size())));
}

}  // namespace spoilbook::form
