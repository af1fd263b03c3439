// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/flow_layout.h"

#include <QWidget>

#include "forms/shared/type_scale.h"

namespace spoilbook::form {

FlowLayout::FlowLayout(QWidget* parent) : QLayout(parent) {
    setContentsMargins(0, 0, 0, 0);
    setSpacing(grid);
}

FlowLayout::~FlowLayout() {
    for (QLayoutItem* item : items_)
        delete item;
}

void FlowLayout::addItem(QLayoutItem* item) {
    items_.push_back(item);
}

QLayoutItem* FlowLayout::itemAt(int index) const {
    return index >= 0 && index < count() ? items_[std::size_t(index)] : nullptr;
}

QLayoutItem* FlowLayout::takeAt(int index) {
    QLayoutItem* item = itemAt(index);
    if (item) items_.erase(items_.begin() + index);
    return item;
}

QSize FlowLayout::minimumSize() const {
    QSize size;
    for (const QLayoutItem* item : items_)
        size = size.expandedTo(item->minimumSize());
    return size;
}

void FlowLayout::setGeometry(const QRect& place) {
    QLayout::setGeometry(place);
    lay(place, true);
}

int FlowLayout::lay(const QRect& place, bool move) const {
    int x = place.x();
    int y = place.y();
    int line = 0;
    for (QLayoutItem* item : items_) {
        if (item->isEmpty()) continue;
        const int width = qMin(item->sizeHint().width(), place.width());
        const int height =
            item->hasHeightForWidth() ? item->heightForWidth(width) : item->sizeHint().height();
        if (x > place.x() && x + width > place.x() + place.width()) {
            x = place.x();
            y += line + spacing();
            line = 0;
        }
        if (move) item->setGeometry(QRect(x, y, width, height));
        x += width + spacing();
        line = qMax(line, height);
    }
    return y + line - place.y();
}

}  // namespace spoilbook::form
