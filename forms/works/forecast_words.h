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
/// "as the last 13 weeks", or what is supposed instead: "What if: filling hours × 1.20."
QString supposed_shown(const Supposed& supposed, int weeks, const QLocale& locale);
bool as_logged(const Supposed& supposed);

}  // namespace spoilbook::form
