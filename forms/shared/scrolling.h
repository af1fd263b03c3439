// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QScrollArea>

namespace spoilbook::form {

/// At a large scale a page may be higher or wider than the window: it scrolls rather than being cut.
QScrollArea* scrolling(QWidget* page, QWidget* parent);

}  // namespace spoilbook::form
