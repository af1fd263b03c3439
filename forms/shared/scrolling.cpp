// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/scrolling.h"

namespace spoilbook::form {

QScrollArea* scrolling(QWidget* page, QWidget* parent) {
    auto* area = new QScrollArea(parent);
    area->setFrameShape(QFrame::NoFrame);
    area->setWidgetResizable(true);
    area->setFocusPolicy(Qt::NoFocus);
    area->setWidget(page);
    return area;
}

}  // namespace spoilbook::form
