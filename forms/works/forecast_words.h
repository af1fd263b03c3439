// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLocale>
#include <QString>

#include "model/progress/forecast.h"

namespace spoilbook::form {

/// What comes first, with its chance, and the dates of the target; where there is no forecast, why. `as_at`:
/// its day; dates of the same year go without it.
QString forecast_sentence(const Forecast& forecast, Day as_at, const QLocale& locale);

/// "the 12-month limit (condition 4)", "the month's limit for C4 (condition 8)"
QString limit_phrase(const LimitState& state);
/// "97 in 100"; "fewer than 1 in 100" and "more than 99 in 100" at the ends: draws prove no never or always.
QString chance_shown(double p, const QLocale& locale);
/// "about 23 June, between 15 and 30 June"
QString dates_shown(const Dates& dates, Day as_at, const QLocale& locale);
/// "9 June", with its year where that is not the one of `as_at`.
QString near_day(Day day, Day as_at, const QLocale& locale);

}  // namespace spoilbook::form
