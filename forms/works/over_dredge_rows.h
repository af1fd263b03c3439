// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLocale>

#include "forms/shared/table_model.h"
#include "model/progress/over_dredge.h"

namespace spoilbook::form {

/// What was dug below target in one claim, or in all; copied out of the season.
struct OverDredgeRow {
    QString claim, reports, assumed;
    std::optional<Measured> within, beyond, below, cost;
    std::optional<double> share;  ///< of what was removed
};

/// A row a claim and one for all together; none where no report tells of it. Cost at so much a cubic metre.
std::vector<OverDredgeRow> over_dredge_rows(const OverDredged& dug, std::optional<double> unit_cost);
std::vector<Column<OverDredgeRow>> over_dredge_columns(const QLocale& locale);
/// "1 530 ± 160 m³ in situ were dug below target level, 1.4 % of what was removed …"
QString over_dredge_sentence(const OverDredged& dug, std::optional<double> unit_cost, const QLocale& locale);

}  // namespace spoilbook::form
