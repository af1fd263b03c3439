// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "forms/shared/chart_data.h"
#include "forms/shared/palette.h"

namespace spoilbook::form {

/// The chart with title and sentence as .png (two pixels a unit), .svg or .pdf (A4 across), by the ending of
/// `path`. All or nothing. Empty: written; otherwise why not, for a person.
QString write_picture(const ChartData& data, const Palette& tones, const QString& path);

}  // namespace spoilbook::form
