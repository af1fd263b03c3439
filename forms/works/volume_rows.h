// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLocale>

#include "forms/shared/table_model.h"
#include "forms/works/bars.h"
#include "model/answer/standing.h"
#include "model/answer/volumes.h"

namespace spoilbook::form {

/// "month", "claim", … in the reader's language.
QString grouping_shown(GroupBy by);
/// The key of a row as it is read.
QString volume_key(const VolumeRow& row, GroupBy by, const QLocale& locale);
std::vector<Column<VolumeRow>> volume_columns(GroupBy by, const QLocale& locale);
/// One bar a row; months stand against the monthly limit.
BarsData volume_bars(const std::vector<VolumeRow>& rows, GroupBy by, std::optional<double> monthly_limit,
                     const QLocale& locale);

}  // namespace spoilbook::form
