// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLocale>
#include <QString>
#include <optional>

#include "model/unit/zone.h"

namespace spoilbook::form {

/// A day as a person types it: 2026-06-30; 30/6, 30.6., 30 June or 30 Jun (months also in `locale`), with a
/// year behind it or, without, the next such day after `after`. Nothing where the text is no day.
std::optional<Day> day_typed(const QString& text, Day after, const QLocale& locale);

}  // namespace spoilbook::form
