// SPDX-License-Identifier: GPL-3.0-or-later
// How the map is moved: wheel, drag, keys, and picking a release.
#include <QKeyEvent>
#include <QMouseEvent>
#include <algorithm>

#include "forms/consent/release_map.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {
namespace {

constexpr double least_zoom = 0.5;
constexpr double most_zoom = 400;
constexpr double reach = 10;  // from the pointer to a dot that was meant

}  // namespace

void ReleaseMap::zoom(double factor, QPointF about) {
    bool can = false;
    const QPointF before = on_paper(rect()).inverted(&can).map(about);
    if (!can) return;
    zoom_ = std::clamp(zoom_ * factor, least_zoom, most_zoom);
    // What is under the pointer stays under it.
    shift_ += before - on_paper(rect()).inverted().map(about);
    update();
}

void ReleaseMap::wheelEvent(QWheelEvent* event) {
    zoom(std::pow(1.0015, event->angleDelta().y()), event->position());
    event->accept();
}

void ReleaseMap::mousePressEvent(QMouseEvent* event) {
    pressed_ = last_ = event->position();
    setFocus(Qt::MouseFocusReason);
}

void ReleaseMap::mouseMoveEvent(QMouseEvent* event) {
    if (!(event->buttons() & Qt::LeftButton)) return;
    const QTransform back = on_paper(rect()).inverted();
    shift_ -= back.map(event->position()) - back.map(last_);
    last_ = event->position();
    update();
}

void ReleaseMap::mouseReleaseEvent(QMouseEvent* event) {
    if ((event->position() - pressed_).manhattanLength() > half_grid) return;
    const QTransform to = on_paper(rect());
    const Dot* nearest = nullptr;
    double least = reach;
    // From the top: what is drawn last is what was seen.
    for (auto dot = dots_.rbegin(); dot != dots_.rend(); ++dot) {
        const double away = QLineF(to.map(dot->place), event->position()).length();
        if (away >= least) continue;
        least = away;
        nearest = &*dot;
    }
    if (!nearest) return;
    mark(nearest->row);
    emit picked(marked_);
}

void ReleaseMap::keyPressEvent(QKeyEvent* event) {
    const double step = 8 * grid / std::max(1e-9, on_paper(rect()).m11());
    switch (event->key()) {
        case Qt::Key_Plus:
        case Qt::Key_Equal:
            return zoom(1.4, rect().center());
        case Qt::Key_Minus:
            return zoom(1 / 1.4, rect().center());
        case Qt::Key_0:
            return show_all();
        case Qt::Key_Left:
            shift_.rx() -= step;
            break;
        case Qt::Key_Right:
            shift_.rx() += step;
            break;
        case Qt::Key_Up:
            shift_.ry() += step;
            break;
        case Qt::Key_Down:
            shift_.ry() -= step;
            break;
        default:
            return Drawing::keyPressEvent(event);
    }
    update();
}

}  // namespace spoilbook::form
