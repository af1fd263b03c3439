// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/release_map.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "forms/shared/number_typed.h"
#include "forms/shared/paper_style.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {
namespace {

constexpr double margin = 3 * grid;
/// From a release to its label: past the ring of the one that is chosen.
constexpr double label_gap = 14;

QPainterPath path_of(const MapShape& shape, const QTransform& to) {
    QPainterPath path;
    for (const QPolygonF& ring : shape.rings)
        path.addPolygon(to.map(ring));
    return path;
}

/// Moved as far as it must be to lie inside; what is larger than the place keeps its left top corner.
QRectF within(const QRectF& place, QRectF what) {
    what.moveLeft(std::max(place.left(), std::min(what.left(), place.right() - what.width())));
    what.moveTop(std::max(place.top(), std::min(what.top(), place.bottom() - what.height())));
    return what;
}

}  // namespace

QRectF label_beside(const QPointF& at, const QSizeF& size, const QRectF& place) {
    // One more pixel: metrics are rounded.
    const QSizeF needed(std::min(size.width() + 1, place.width() - 2 * label_gap), size.height() + 1);
    const QRectF right(QPointF(at.x() + label_gap, at.y() - needed.height() / 2), needed);
    const bool fits = right.right() <= place.right();
    return within(place, fits ? right : right.translated(-2 * label_gap - needed.width(), 0));
}

ReleaseMap::ReleaseMap(QWidget* parent) : Drawing(tr("Releases on the ground"), parent) {
    setMinimumSize(40 * grid, 28 * grid);
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleDescription(tr("The table beside it has the same releases."));
    setToolTip(tr("Wheel or + and − zoom, dragging or arrows move, 0 shows all."));
}

void ReleaseMap::show_shapes(std::vector<MapShape> shapes) {
    shapes_ = std::move(shapes);
    extent_ = {};
    for (const MapShape& shape : shapes_) {
        for (const QPolygonF& ring : shape.rings)
            extent_ = extent_.united(ring.boundingRect());
    }
    update();
}

void ReleaseMap::show_releases(const std::vector<ReleaseRow>& rows) {
    dots_.clear();
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (rows[i].place)
            dots_.push_back({int(i), *rows[i].place, verdict_state(rows[i].verdict), rows[i].label});
    }
    std::stable_sort(dots_.begin(), dots_.end(), [](const Dot& a, const Dot& b) {
        return a.state == State::clear && b.state != State::clear;
    });
    marked_ = -1;
    update();
}

void ReleaseMap::mark(int row) {
    marked_ = row;
    update();
}

void ReleaseMap::show_all() {
    zoom_ = 1;
    shift_ = {};
    update();
}

// Metres to the paper: north is up, one scale both ways.
QTransform ReleaseMap::on_paper(const QRectF& place) const {
    const QRectF inner = place.adjusted(margin, margin, -margin, -margin);
    if (extent_.isEmpty() || inner.isEmpty()) return {};
    const double scale = zoom_ * std::min(inner.width() / extent_.width(), inner.height() / extent_.height());
    const QPointF middle = extent_.center() + shift_;
    QTransform to;
    to.translate(place.center().x(), place.center().y());
    to.scale(scale, -scale);
    to.translate(-middle.x(), -middle.y());
    return to;
}

void ReleaseMap::draw(QPainter& painter, const QRectF& place, const Palette& tones) const {
    painter.save();
    painter.setClipRect(place);
    painter.fillRect(place, tones[Tone::sunk]);
    painter.setFont(type_font(Step::small));
    if (extent_.isEmpty()) {
        painter.setPen(tones[Tone::quiet]);
        painter.drawText(place, Qt::AlignCenter, tr("The book has no ground with an outline."));
    } else {
        const QTransform to = on_paper(place);
        draw_shapes(painter, to, tones);
        draw_dots(painter, place, to, tones);
        draw_names(painter, place, to, tones);
        draw_scale(painter, place, to, tones);
    }
    painter.setPen(QPen(tones[Tone::line], 1));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(place.adjusted(0.5, 0.5, -0.5, -0.5));
    painter.restore();
}

void ReleaseMap::draw_shapes(QPainter& painter, const QTransform& to, const Palette& tones) const {
    for (const MapShape& shape : shapes_) {
        const QPainterPath path = path_of(shape, to);
        switch (shape.kind) {
            case MapShape::ground:
                painter.fillPath(path, tones[Tone::surface]);
                painter.strokePath(path, QPen(tones[Tone::text], 1.5));
                break;
            case MapShape::cell:
                painter.strokePath(path, QPen(tones[Tone::edge], 1, Qt::DotLine));
                break;
            case MapShape::exclusion:
                painter.fillPath(path, tones[Tone::sunk]);
                painter.fillPath(path, QBrush(tones[Tone::edge], Qt::BDiagPattern));
                painter.strokePath(path, QPen(tones[Tone::text], 1.5, Qt::DashLine));
                break;
        }
    }
}

void ReleaseMap::draw_names(QPainter& painter, const QRectF& place, const QTransform& to,
                            const Palette& tones) const {
    const QFontMetricsF metrics(painter.font());
    for (const MapShape& shape : shapes_) {
        if (shape.rings.empty()) continue;
        const QRectF box = to.mapRect(shape.rings.front().boundingRect());
        const QRectF words = metrics.boundingRect(shape.name).adjusted(-3, -1, 3, 1);
        const QPointF middle = shape.name_at ? to.map(*shape.name_at) : box.center();
        QPointF corner = middle - QPointF(words.width(), words.height()) / 2;
        if (shape.kind == MapShape::ground) corner = box.topLeft() - QPointF(0, words.height() + 2);
        if (shape.kind == MapShape::exclusion)
            corner = {box.center().x() - words.width() / 2, box.bottom() + 2};
        // A shape that is out of sight has no name to show; one that is partly in sight has its whole name.
        if (!box.intersects(place)) continue;
        const QRectF where = within(place, QRectF(corner, words.size()));
        if (shape.kind == MapShape::cell && words.width() + 8 > box.width()) continue;
        QColor behind = tones[Tone::surface];
        behind.setAlphaF(0.75F);
        if (shape.kind != MapShape::ground) painter.fillRect(where, behind);
        painter.setPen(tones[shape.kind == MapShape::cell ? Tone::quiet : Tone::text]);
        painter.drawText(where, Qt::AlignCenter, shape.name);
    }
}

void ReleaseMap::draw_dots(QPainter& painter, const QRectF& place, const QTransform& to,
                           const Palette& tones) const {
    // A disc is a point of a round pen: thousands go in one stroke.
    const QFontMetricsF metrics(painter.font());
    const double side = std::clamp(4 + std::log2(zoom_), 4.0, 10.0);
    QPolygonF inside;
    for (const Dot& dot : dots_) {
        if (dot.state == State::clear) inside << to.map(dot.place);
    }
    painter.setPen(QPen(tones[fill_of(State::clear)], side, Qt::SolidLine, Qt::RoundCap));
    painter.drawPoints(inside);
    for (const Dot& dot : dots_) {
        const QPointF at = to.map(dot.place);
        if (dot.state != State::clear)
            draw_shape(painter, QRectF(at.x() - 6, at.y() - 6, 12, 12), dot.state, tones);
        if (dot.row == marked_) {
            painter.setPen(QPen(tones[Tone::accent], 2));
            painter.setBrush(Qt::NoBrush);
            painter.drawEllipse(at, 12, 12);
        }
        if (dot.row != marked_ && dot.state == State::clear) continue;
        if (!place.contains(at)) continue;
        const QRectF where = label_beside(at, metrics.boundingRect(dot.label).size(), place);
        painter.setPen(tones[Tone::text]);
        painter.drawText(where, Qt::AlignLeft | Qt::AlignVCenter,
                         metrics.elidedText(dot.label, Qt::ElideRight, where.width()));
    }
}

void ReleaseMap::draw_scale(QPainter& painter, const QRectF& place, const QTransform& to,
                            const Palette& tones) const {
    const double a_metre = to.m11();
    const double rough = 15 * grid / a_metre;
    const double power = std::pow(10, std::floor(std::log10(rough)));
    const double part = rough / power;
    const double metres = (part >= 5 ? 5 : part >= 2 ? 2 : 1) * power;
    const double length = metres * a_metre;
    const QPointF left(place.left() + 2 * grid, place.bottom() - 2 * grid);
    painter.setPen(QPen(tones[Tone::text], 1.5));
    painter.drawLine(left, left + QPointF(length, 0));
    painter.drawLine(left + QPointF(0, -4), left + QPointF(0, 4));
    painter.drawLine(left + QPointF(length, -4), left + QPointF(length, 4));
    painter.drawText(left + QPointF(length + grid, 4),
                     number_shown(metres, metres < 1 ? 1 : 0, QLocale()) + tr(" m"));
    const QPointF north(place.right() - 3 * grid, place.bottom() - 2 * grid);
    painter.drawLine(north, north - QPointF(0, 3 * grid));
    painter.drawLine(north - QPointF(0, 3 * grid), north - QPointF(4, 3 * grid - 7));
    painter.drawLine(north - QPointF(0, 3 * grid), north - QPointF(-4, 3 * grid - 7));
    painter.drawText(QRectF(north.x() - 20, north.y() - 5 * grid, 40, 2 * grid), Qt::AlignCenter, tr("N"));
}

void ReleaseMap::paintEvent(QPaintEvent* event) {
    Drawing::paintEvent(event);
    if (!hasFocus()) return;
    QPainter painter(this);
    painter.setPen(QPen(palette_in_use()[Tone::accent], 2));
    painter.drawRect(rect().adjusted(1, 1, -2, -2));
}

}  // namespace spoilbook::form
