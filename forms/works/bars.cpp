// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/bars.h"

#include <QPainter>
#include <algorithm>

#include "forms/shared/type_scale.h"

namespace spoilbook::form {
namespace {

constexpr int text_line = 2 * grid + half_grid;

}  // namespace

Bars::Bars(const QString& title, QWidget* parent) : Drawing(title, parent) {
    setMinimumSize(40 * grid, 20 * grid);
}

void Bars::show_data(BarsData data) {
    data_ = std::move(data);
    QStringList said;
    for (const Bar& bar : data_.bars)
        said << bar.name + u' ' + bar.value_text;
    setAccessibleDescription(said.join(QStringLiteral("; ")));
    update();
}

double Bars::top() const {
    double most = data_.limit.value_or(0);
    for (const Bar& bar : data_.bars)
        most = std::max(most, bar.value.value_or(0) + bar.u);
    return most > 0 ? most : 1;
}

void Bars::draw(QPainter& painter, const QRectF& place, const Palette& tones) const {
    painter.setFont(type_font(Step::small));
    painter.setPen(tones[Tone::quiet]);
    if (data_.bars.empty()) {
        painter.drawText(place, Qt::AlignCenter | Qt::TextWordWrap, data_.empty_text);
        return;
    }
    painter.drawText(place.adjusted(0, 0, 0, 0), Qt::AlignTop | Qt::AlignLeft, data_.axis);
    const QRectF plot = place.adjusted(0, 2 * text_line, 0, -2 * text_line);
    const double slot = plot.width() / double(data_.bars.size());
    for (std::size_t i = 0; i < data_.bars.size(); ++i) {
        draw_bar(painter, data_.bars[i],
                 QRectF(plot.left() + slot * double(i), plot.top(), slot, plot.height()), top(), tones);
    }
    painter.setPen(QPen(tones[Tone::edge], 1));
    painter.drawLine(plot.bottomLeft(), plot.bottomRight());
    draw_limit(painter, plot, top(), tones);
}

void Bars::draw_bar(QPainter& painter, const Bar& bar, const QRectF& slot, double top,
                    const Palette& tones) const {
    const auto y_of = [&](double value) { return slot.bottom() - slot.height() * value / top; };
    const double width = std::min(slot.width() * 0.62, 8.0 * grid);
    const double centre = slot.center().x();
    painter.setPen(tones[Tone::text]);
    const QFontMetrics metrics(painter.font());
    painter.drawText(QRectF(slot.left(), slot.bottom(), slot.width(), text_line), Qt::AlignCenter,
                     metrics.elidedText(bar.name, Qt::ElideRight, int(slot.width())));
    painter.drawText(QRectF(slot.left(), slot.bottom() + text_line, slot.width(), text_line), Qt::AlignCenter,
                     metrics.elidedText(bar.value_text, Qt::ElideRight, int(slot.width())));
    if (!bar.value) return;
    const double y = y_of(*bar.value);
    const QRectF body(centre - width / 2, y, width, slot.bottom() - y);
    const QColor colour = tones[bar.over ? Tone::over : Tone::series_1];
    QColor fill = colour;
    // By night a large bright field would blind: the outline carries the bar.
    if (tones.light() == Light::night) fill.setAlphaF(0.3F);
    painter.fillRect(body, fill);
    painter.setPen(QPen(colour, 1));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(body);
    if (bar.over) painter.fillRect(body, QBrush(tones[Tone::surface], Qt::BDiagPattern));
    if (bar.u <= 0) return;
    const double above = y_of(*bar.value + bar.u);
    const double below = y_of(std::max(0.0, *bar.value - bar.u));
    painter.setPen(QPen(tones[Tone::text], 1));
    painter.drawLine(QPointF(centre, above), QPointF(centre, y));
    painter.drawLine(QPointF(centre - 4, above), QPointF(centre + 4, above));
    painter.setPen(QPen(tones[tones.light() == Light::night ? Tone::text : Tone::surface], 1));
    painter.drawLine(QPointF(centre, y), QPointF(centre, below));
    painter.drawLine(QPointF(centre - 4, below), QPointF(centre + 4, below));
}

void Bars::draw_limit(QPainter& painter, const QRectF& plot, double top, const Palette& tones) const {
    if (!data_.limit) return;
    const double y = plot.bottom() - plot.height() * *data_.limit / top;
    painter.setPen(QPen(tones[Tone::over], 2, Qt::DashDotLine));
    painter.drawLine(QPointF(plot.left(), y), QPointF(plot.right(), y));
    painter.setPen(tones[Tone::text]);
    const QFontMetrics metrics(painter.font());
    const double width = metrics.horizontalAdvance(data_.limit_text) + grid;
    const QRectF words(plot.right() - width, y - text_line - 2, width, text_line);
    painter.fillRect(words, tones[Tone::surface]);
    painter.drawText(words, Qt::AlignVCenter | Qt::AlignRight, data_.limit_text);
}

}  // namespace spoilbook::form
