// SPDX-License-Identifier: GPL-3.0-or-later
// Turbidity to suspended solids, in words, rows and a chart.
#pragma once

#include <QLocale>

#include "forms/shared/chart_data.h"
#include "forms/shared/table_model.h"
#include "model/answer/solids.h"
#include "model/unit/zone.h"

namespace spoilbook::form {

/// The probability with which a new sample lies in the interval that is shown.
inline constexpr double solids_probability = 0.9;

/// The site's line with all that must be said with it; or why there is none.
QString solids_sentence(const SiteSolids& solids, const QLocale& locale);
/// What the line says at one turbidity over 0. REQUIRES a line.
QString solids_at_words(const SiteSolids& solids, double turbidity, const QLocale& locale);
/// Samples, line and interval, both axes in logarithms.
ChartData solids_chart(const SiteSolids& solids, const QLocale& locale);
std::vector<Column<SolidsPoint>> solids_columns(const QString& unit, const Zone& zone, const QLocale& locale);

}  // namespace spoilbook::form
