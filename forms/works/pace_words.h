// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/shared/chart_data.h"
#include "forms/shared/figure.h"
#include "forms/works/lying_bars.h"
#include "forms/works/pace_rows.h"
#include "model/progress/pace.h"

namespace spoilbook::form {

/// Where the hours went, and who holds up the loads: two sentences.
QString pace_sentence(const HoursRow& all, const Pace& pace, const QLocale& locale);

/// The hours by cause, the longest first; what is left of them together as "others".
std::vector<LyingBar> cause_bars(const std::vector<CauseRow>& rows, const QLocale& locale);

/// In-situ m³ an operating hour, week by week, with a band of ± u; a week without digging breaks nothing.
ChartData pace_chart(const std::vector<PaceRow>& weeks, const Zone& zone, const QLocale& locale);

/// "the dredger", "the tugs", "the barges"
QString governs_shown(Governs governs);

FigureText rate_figure(const ProductivityRow& all, const QLocale& locale);
FigureText shift_figure(const ProductivityRow& all, const QLocale& locale);
FigureText positioning_figure(const std::optional<Spread>& steps, const QLocale& locale);
FigureText least_figure(const Pace& pace, const QLocale& locale);

}  // namespace spoilbook::form
