// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLocale>

#include "forms/shared/chart_data.h"
#include "model/answer/standing.h"
#include "model/progress/forecast.h"

namespace spoilbook::form {

/// Plan and what is left, day by day, down to zero, with the as-at marked; with a forecast also its fan and
/// where the limits would bite, seen from the weeks of the log that it draws from, or the whole season.
/// Points before that stay in the data. With `as_logged`, its even line beside the forecast of what is
/// supposed. x is days since 1970.
ChartData burndown_chart(const BurnDown& burn, Day as_at, const QLocale& locale,
                         const Forecast* forecast = nullptr, bool whole_season = false,
                         const Forecast* as_logged = nullptr);

}  // namespace spoilbook::form
