// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/bed_plot.h"

#include <QLocale>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "forms/shared/number_typed.h"
#include "forms/shared/round_step.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {

/// The same scale both ways, so that the line of agreement is the diagonal.
struct BedPlot::Frame {
    QRectF plot;
    double least = 0, most = 1, step = 1;

    [[nodiscard]] double x(double value) const {
        return plot.left() + plot.width() * (value - least) / (most - least);
    }
    [[nodiscard]] double y(double value) const {
        return plot.bottom() - plot.height() * (value - least) / (most - least);
    }
};

BedPlot::BedPlot(const QString& title, QWidget* parent) : Drawing(title, parent) {
    setMinimumSize(36 * grid, 24 * grid);
}

void BedPlot::show_data(BedPlotData data) {
    data_ = std::move(data);
    QStringList said;
    const QLocale locale;
    for (const BedPoint& point : data_.points) {
        said << tr("%1: barges %2, bed %3, %4")
                    .arg(point.name, number_shown(point.barges.value, 0, locale),
                         number_shown(point.bed.value, 0, locale), word_of(point.state));
    }
    setAccessibleDescription(said.join(QStringLiteral("; ")));
    update();
}

void BedPlot::draw(QPainter& painter, const QRectF& place, const Palette& tones) const {
    painter.setFont(type_font(Step::small));
    painter.setPen(tones[Tone::quiet]);
    if (data_.points.empty()) {
        painter.drawText(place, Qt::AlignCenter | Qt::TextWordWrap, data_.empty_text);
        return;
    }
    Frame frame;
    frame.least = HUGE_VAL;
    frame.most = -HUGE_VAL;
    for (const BedPoint& point : data_.points) {
        for (const Measured& side : {point.bed, point.barges}) {
            frame.least = std::min(frame.least, side.value - 2 * side.u);
            frame.most = std::max(frame.most, side.value + 2 * side.u);
        }
    }
    frame.step = round_step(std::max(frame.most - frame.least, 1.0));
    frame.least = std::floor(frame.least / frame.step) * frame.step;
    frame.most = std::ceil(frame.most / frame.step) * frame.step;
    const double line = 2 * grid + half_grid;
    frame.plot = place.adjusted(7 * grid, line + half_grid, -4 * grid, -2 * line);
    draw_axes(painter, frame, tones);
    for (const BedPoint& point : data_.points)
        draw_point(painter, frame, point, tones);
    draw_names(painter, frame, tones);
}

// Beside its point, or where claims lie close, the nearest free place; a name that went far has a thread to
// it.
void BedPlot::draw_names(QPainter& painter, const Frame& frame, const Palette& tones) const {
    std::vector<QRectF> taken;
    for (const BedPoint& point : data_.points) {
        const QPointF at(frame.x(point.bed.value), frame.y(point.barges.value));
        taken.emplace_back(at.x() - 8, at.y() - 8, 16, 16);
    }
    const double height = painter.fontMetrics().height();
    for (const BedPoint& point : data_.points) {
        const QPointF at(frame.x(point.bed.value), frame.y(point.barges.value));
        const double width = painter.fontMetrics().horizontalAdvance(point.name) + half_grid;
        const auto free = [&](const QRectF& place) {
            return frame.plot.contains(place) &&
                   std::none_of(taken.begin(), taken.end(),
                                [&](const QRectF& other) { return other.intersects(place); });
        };
        QRectF place(at.x() + grid + 2, at.y() - height - 2, width, height);
        for (int try_at = 0; try_at < 24 && !free(place); ++try_at) {
            const double line = (try_at / 2 + 1) / 2 * height * (try_at / 2 % 2 == 0 ? 1 : -1);
            const double side = try_at % 2 == 0 ? grid + 2 : -grid - 2 - width;
            place.moveTopLeft({at.x() + side, at.y() + line - height / 2});
        }
        taken.push_back(place);
        if (std::fabs(place.center().y() - at.y()) > 1.5 * height) {
            painter.setPen(QPen(tones[Tone::edge], 1));
            painter.drawLine(
                at, QPointF(place.left() > at.x() ? place.left() : place.right(), place.center().y()));
        }
        painter.setPen(tones[Tone::text]);
        painter.drawText(place, Qt::AlignLeft | Qt::AlignVCenter, point.name);
    }
}

void BedPlot::draw_axes(QPainter& painter, const Frame& frame, const Palette& tones) const {
    const QLocale locale;
    const double line = 2 * grid + half_grid;
    const QRectF& plot = frame.plot;
    for (double at = frame.least; at <= frame.most + frame.step / 2; at += frame.step) {
        painter.setPen(QPen(tones[Tone::line], 1));
        painter.drawLine(QPointF(plot.left(), frame.y(at)), QPointF(plot.right(), frame.y(at)));
        painter.drawLine(QPointF(frame.x(at), plot.top()), QPointF(frame.x(at), plot.bottom()));
        painter.setPen(tones[Tone::text]);
        const QString text = number_shown(at, 0, locale);
        painter.drawText(QRectF(plot.left() - 8 * grid, frame.y(at) - line / 2, 7 * grid, line),
                         Qt::AlignRight | Qt::AlignVCenter, text);
        // Every second one where the words would meet.
        const bool narrow = frame.x(at + frame.step) - frame.x(at) < 6 * grid;
        if (narrow && std::lround((at - frame.least) / frame.step) % 2 == 1) continue;
        painter.drawText(QRectF(frame.x(at) - 4 * grid, plot.bottom() + 2, 8 * grid, line),
                         Qt::AlignHCenter | Qt::AlignTop, text);
    }
    painter.setPen(tones[Tone::quiet]);
    painter.drawText(QRectF(plot.left() - 7 * grid, plot.top() - line - half_grid, plot.width(), line),
                     Qt::AlignLeft | Qt::AlignTop, data_.up);
    painter.drawText(QRectF(plot.left(), plot.bottom() + line, plot.width(), line),
                     Qt::AlignRight | Qt::AlignTop, data_.across);
    painter.setPen(QPen(tones[Tone::edge], 1.5, Qt::DashLine));
    painter.drawLine(plot.bottomLeft(), plot.topRight());
    painter.setPen(tones[Tone::quiet]);
    painter.drawText(QRectF(plot.right() - 30 * grid, plot.bottom() - line - half_grid, 29 * grid, line),
                     Qt::AlignRight | Qt::AlignBottom, data_.on_line);
}

void BedPlot::draw_point(QPainter& painter, const Frame& frame, const BedPoint& point, const Palette& tones) {
    const QPointF at(frame.x(point.bed.value), frame.y(point.barges.value));
    const double cap = half_grid;
    painter.setPen(QPen(tones[fill_of(point.state)], 1.5));
    const double left = frame.x(point.bed.value - 2 * point.bed.u);
    const double right = frame.x(point.bed.value + 2 * point.bed.u);
    const double low = frame.y(point.barges.value - 2 * point.barges.u);
    const double high = frame.y(point.barges.value + 2 * point.barges.u);
    painter.drawLine(QPointF(left, at.y()), QPointF(right, at.y()));
    painter.drawLine(QPointF(at.x(), low), QPointF(at.x(), high));
    for (const double x : {left, right})
        painter.drawLine(QPointF(x, at.y() - cap), QPointF(x, at.y() + cap));
    for (const double y : {low, high})
        painter.drawLine(QPointF(at.x() - cap, y), QPointF(at.x() + cap, y));
    draw_shape(painter, QRectF(at.x() - 7, at.y() - 7, 14, 14), point.state, tones);
}

}  // namespace spoilbook::form
