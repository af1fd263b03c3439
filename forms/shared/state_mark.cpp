// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/state_mark.h"

#include <QCoreApplication>

#include "forms/shared/paper_style.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {

Tone fill_of(State state) {
    switch (state) {
        case State::clear:
            return Tone::ok;
        case State::attention:
            return Tone::attention;
        case State::hold:
            return Tone::over;
        case State::unknown:
            break;
    }
    return Tone::unknown;
}

Tone tint_of(State state) {
    switch (state) {
        case State::clear:
            return Tone::ok_tint;
        case State::attention:
            return Tone::attention_tint;
        case State::hold:
            return Tone::over_tint;
        case State::unknown:
            break;
    }
    return Tone::unknown_tint;
}

QString word_of(State state) {
    switch (state) {
        case State::clear:
            return StateMark::tr("clear");
        case State::attention:
            return StateMark::tr("attention");
        case State::hold:
            return StateMark::tr("hold");
        case State::unknown:
            break;
    }
    return StateMark::tr("cannot tell");
}

void draw_shape(QPainter& painter, const QRectF& place, State state, const Palette& tones) {
    const double side = std::min(place.width(), place.height());
    const QPointF c = place.center();
    const double h = side / 2;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(tones[fill_of(state)]);
    switch (state) {
        case State::clear:
            painter.drawEllipse(c, h * 0.92, h * 0.92);
            break;
        case State::attention:
            painter.drawPolygon(
                QPolygonF({c + QPointF(0, -h), c + QPointF(h, h * 0.8), c + QPointF(-h, h * 0.8)}));
            break;
        case State::hold:
            painter.drawRect(QRectF(c.x() - h * 0.85, c.y() - h * 0.85, h * 1.7, h * 1.7));
            break;
        case State::unknown: {
            // Hollow: an answer that is missing must not weigh like one that is there.
            const double r = h * 0.86;
            painter.setBrush(Qt::NoBrush);
            painter.setPen(
                QPen(tones[fill_of(state)], side / 7, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
            painter.drawPolygon(
                QPolygonF({c + QPointF(0, -r), c + QPointF(r, 0), c + QPointF(0, r), c + QPointF(-r, 0)}));
            break;
        }
    }
    painter.restore();
}

StateMark::StateMark(State state, QWidget* parent) : QWidget(parent), state_(state) {
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    setFont(type_font(Step::body, Weight::semibold));
    show_state(state);
}

void StateMark::show_state(State state, const QString& word) {
    state_ = state;
    word_ = word.isEmpty() ? word_of(state) : word;
    setAccessibleName(word.isEmpty() || word == word_of(state) ? word_ : word_of(state) + ": " + word_);
    updateGeometry();
    update();
}

void StateMark::set_large(bool large) {
    large_ = large;
    setFont(type_font(large ? Step::title : Step::body, Weight::semibold));
    updateGeometry();
}

int StateMark::shape_side() const {
    return large_ ? 3 * grid : 14;
}

int StateMark::margin() const {
    return large_ ? 2 * grid : grid;
}

QSize StateMark::sizeHint() const {
    const QFontMetrics metrics(font());
    return {shape_side() + metrics.horizontalAdvance(word_) + 3 * margin(),
            std::max(shape_side(), metrics.height()) + margin()};
}

void StateMark::paintEvent(QPaintEvent*) {
    const Palette& tones = palette_in_use();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(tones[tint_of(state_)]);
    painter.drawRoundedRect(rect(), 3, 3);
    const int side = shape_side();
    draw_shape(painter, QRectF(margin(), (height() - side) / 2.0, side, side), state_, tones);
    painter.setPen(tones[Tone::text]);
    painter.drawText(rect().adjusted(2 * margin() + side, 0, 0, 0), Qt::AlignVCenter | Qt::AlignLeft, word_);
}

}  // namespace spoilbook::form
