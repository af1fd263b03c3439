// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLocale>

#include "forms/shared/figure.h"
#include "model/answer/standing.h"

namespace spoilbook::form {

/// In one sentence: done of planned, left, against the plan, the limit with the least headroom.
QString burndown_sentence(const BurnDown& burn, const std::vector<LimitState>& limits, const QLocale& locale);

/// How many loads no method can value, with a blank after it; empty where there are none.
QString unknown_words(const BurnDown& burn);

/// The key figures. What was done rounds down, what is left and behind rounds up.
FigureText dredged_figure(const BurnDown& burn, const QLocale& locale);
FigureText left_figure(const BurnDown& burn, const QLocale& locale);
FigureText plan_figure(const BurnDown& burn, const QLocale& locale);
/// `least` null: no limit to speak of.
FigureText headroom_figure(const LimitState* least, const QLocale& locale);

}  // namespace spoilbook::form
