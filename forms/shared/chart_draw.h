// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QChart>
#include <vector>

#include "forms/shared/chart_data.h"
#include "forms/shared/chart_frame.h"
#include "forms/shared/palette.h"

namespace spoilbook::form {

/// A new chart of these data; the caller owns it. Colour is never alone: series differ in stroke and are
/// named in the key.
QChart* make_chart(const ChartData& data, const Palette& tones);

/// The same numbers as a table.
std::vector<Column<ChartRow>> chart_columns(const ChartData& data);
std::vector<ChartRow> chart_rows(const ChartData& data);

}  // namespace spoilbook::form
