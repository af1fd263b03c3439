// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLocale>
#include <QString>
#include <optional>

#include "model/unit/position_text.h"

namespace spoilbook::form {

/// A number as a person types it: with a point, or with the separators of `locale`. Blanks (thin ones too)
/// are passed over. Nothing where the text is not one number.
std::optional<double> number_typed(const QString& text, const QLocale& locale);

/// A latitude or longitude as a person types it, in degrees: any form that parse_degrees reads, with the
/// decimal separator of `locale` or a point.
Checked<double> degrees_typed(const QString& text, Axis axis, const QLocale& locale);

/// A number for reading: `decimals` places, grouped, in the reader's language.
QString number_shown(double value, int decimals, const QLocale& locale);

}  // namespace spoilbook::form
