// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLocale>

#include "forms/shared/table_model.h"
#include "model/progress/forecast.h"

namespace spoilbook::form {

/// The target, a limit or the season's end as a row of dates.
struct ForecastRow {
    QString name;
    QString what;
    Dates dates;
    bool known = true;  ///< it can be forecast
    std::optional<double> p_before_target;
};

/// The target, then each limit in the order of the book, then the season's end where one is to come. None
/// without a forecast. With `as_logged`, what each was without what is supposed, in a row below it.
std::vector<ForecastRow> forecast_rows(const Forecast& forecast, const Forecast* as_logged = nullptr);
/// Dates are copied as 2026-06-09, chances as 0.97.
std::vector<Column<ForecastRow>> forecast_columns(const QLocale& locale);

}  // namespace spoilbook::form
