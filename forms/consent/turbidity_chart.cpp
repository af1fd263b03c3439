// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/turbidity_chart.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "forms/consent/turbidity_frame.h"
#include "forms/consent/turbidity_paint.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {
namespace {

constexpr std::int64_t narrowest_ms = 10 * ms_per_minute;
constexpr double zoom_step = 1.6;

}  // namespace

TurbidityChart::TurbidityChart(const QString& title, QWidget* parent) : Drawing(title, parent) {
    setMinimumSize(60 * grid, 26 * grid);
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::OpenHandCursor);
}

void TurbidityChart::show_data(TurbidityDrawn drawn) {
    drawn_ = std::move(drawn);
    setAccessibleDescription(turbidity_said(drawn_));
    update();
}

void TurbidityChart::show_window(Period window) {
    window_ = window;
    update();
}

void TurbidityChart::mark(int event) {
    marked_ = event;
    update();
}

void TurbidityChart::set_empty_text(const QString& text) {
    empty_text_ = text;
    update();
}

int TurbidityChart::columns() const {
    return std::max(100, width() - axis_width - 2 * grid);
}

/// Kept within the readings, and no narrower than can be read.
void TurbidityChart::ask(Period window) {
    if (!extent_) return;
    const std::int64_t all = extent_->to - extent_->from;
    const std::int64_t width =
        std::min(std::max(window.to - window.from, narrowest_ms), std::max(all, narrowest_ms));
    window.from = std::clamp(window.from, extent_->from, std::max(extent_->from, extent_->to - width));
    window.to = window.from + width;
    if (window == window_) return;
    show_window(window);
    emit window_asked(window);
}

void TurbidityChart::zoom(double factor, double about) {
    const double width = double(window_.to - window_.from);
    const Instant at = window_.from + std::llround(width * about);
    const double narrower = std::max(width / factor, double(narrowest_ms));
    const Instant from = at - std::llround(narrower * about);
    ask({from, from + std::llround(narrower)});
}

void TurbidityChart::pan(double widths) {
    const auto by = std::llround(double(window_.to - window_.from) * widths);
    ask({window_.from + by, window_.to + by});
}

void TurbidityChart::show_all() {
    if (extent_) ask(*extent_);
}

void TurbidityChart::draw(QPainter& painter, const QRectF& place, const Palette& tones) const {
    if (!extent_) {
        painter.setFont(type_font(Step::body));
        painter.setPen(tones[Tone::quiet]);
        painter.drawText(place, Qt::AlignCenter | Qt::TextWordWrap, empty_text_);
        return;
    }
    draw_turbidity(painter, turbidity_frame(place, drawn_, window_), drawn_, marked_, tones);
    if (!hasFocus() || place != QRectF(rect())) return;
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(tones[Tone::accent], 2));
    painter.drawRect(place.adjusted(1, 1, -1, -1));
}

void TurbidityChart::wheelEvent(QWheelEvent* event) {
    const QRectF plot = turbidity_frame(rect(), drawn_, window_).plot;
    const double about = std::clamp((event->position().x() - plot.left()) / plot.width(), 0.0, 1.0);
    const double steps = event->angleDelta().y() / 120.0;
    if (steps != 0) zoom(std::pow(zoom_step, steps), about);
    if (event->angleDelta().x() != 0) pan(-event->angleDelta().x() / 1200.0);
    event->accept();
}

int TurbidityChart::event_at(QPointF place) const {
    const TurbidityFrame frame = turbidity_frame(rect(), drawn_, window_);
    for (std::size_t i = 0; i < drawn_.events.size(); ++i) {
        if (frame.bar(drawn_.events[i]).adjusted(-2, -2, 2, 2).contains(place)) return int(i);
    }
    return -1;
}

void TurbidityChart::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton) return;
    pressed_ = event->position();
    pressed_window_ = window_;
    dragged_ = false;
}

void TurbidityChart::mouseMoveEvent(QMouseEvent* event) {
    if (!pressed_) return;
    const double by = event->position().x() - pressed_->x();
    if (!dragged_ && std::fabs(by) < half_grid) return;
    dragged_ = true;
    setCursor(Qt::ClosedHandCursor);
    const QRectF plot = turbidity_frame(rect(), drawn_, window_).plot;
    const double width = double(pressed_window_.to - pressed_window_.from);
    const auto ms = std::llround(by / plot.width() * width);
    ask({pressed_window_.from - ms, pressed_window_.to - ms});
}

void TurbidityChart::mouseReleaseEvent(QMouseEvent* event) {
    if (pressed_ && !dragged_) {
        const int found = event_at(event->position());
        if (found >= 0) emit event_pressed(found);
    }
    pressed_.reset();
    setCursor(Qt::OpenHandCursor);
}

void TurbidityChart::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_Left:
            return pan(-0.125);
        case Qt::Key_Right:
            return pan(0.125);
        case Qt::Key_Plus:
        case Qt::Key_Equal:
            return zoom(zoom_step);
        case Qt::Key_Minus:
            return zoom(1 / zoom_step);
        case Qt::Key_Home:
            if (extent_) pan(double(extent_->from - window_.from) / double(window_.to - window_.from));
            return;
        case Qt::Key_End:
            if (extent_) pan(double(extent_->to - window_.to) / double(window_.to - window_.from));
            return;
        case Qt::Key_0:
            return show_all();
        default:
            Drawing::keyPressEvent(event);
    }
}

void TurbidityChart::focusInEvent(QFocusEvent* event) {
    Drawing::focusInEvent(event);
    update();
}

void TurbidityChart::focusOutEvent(QFocusEvent* event) {
    Drawing::focusOutEvent(event);
    update();
}

}  // namespace spoilbook::form
