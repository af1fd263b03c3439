// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLocale>

#include "forms/shared/chart_data.h"
#include "model/progress/forecast.h"

namespace spoilbook::form {

/// A day's place on an axis: days since 1970.
double chart_x(Day day);

/// The fan of what is left: a band from the 10 % to the 90 % draw with its middle line.
std::vector<ChartSeries> forecast_fan(const Forecast& forecast);
/// Its middle line alone, dashed, by that name.
ChartSeries even_line(const Forecast& forecast, const QString& name);
/// The day until which a chart must reach to hold the fan and the ticks; nothing without a fan.
std::optional<Day> forecast_end(const Forecast& forecast);
/// A tick at the even date of each limit that comes by the end of the fan or within two weeks of it, with its
/// condition's number, and the season's end. Ticks in a row stand at different heights up to `most`.
std::vector<ChartSeries> limit_ticks(const Forecast& forecast, double most, const QLocale& locale);

}  // namespace spoilbook::form
