// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLabel>

#include "forms/shared/type_scale.h"

namespace spoilbook::form {

/// Plain text in one step of the scale. `quiet` is for captions and notes; both follow the palette by
/// themselves.
QLabel* make_label(const QString& text, Step step, Weight weight, QWidget* parent);
QLabel* make_quiet(const QString& text, Step step, QWidget* parent);

}  // namespace spoilbook::form
