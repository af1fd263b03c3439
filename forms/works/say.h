// SPDX-License-Identifier: GPL-3.0-or-later
// Figures in words for a reader. Rounding never flatters: used up, headroom down.
#pragma once

#include <QCoreApplication>
#include <QLocale>
#include <QString>

#include "model/consent/limit.h"

namespace spoilbook::form {

/// To `decimals` places away from the better side. A value that is on the step already (but for the last
/// binary digits) stays.
QString rounded_up(double value, int decimals, const QLocale& locale);
QString rounded_down(double value, int decimals, const QLocale& locale);
/// "96.8 %", rounded up.
QString share_used(double share, const QLocale& locale);
/// "99.4 %"; "< 0.1 %" and "> 99.9 %" where the one decimal would say none or all.
QString probability_shown(double p, const QLocale& locale);
/// "30 May 2026"
QString day_shown(Day day, const QLocale& locale);
/// "30 May 2026 18:00"
QString moment_shown(Instant at, const Zone& zone, const QLocale& locale);
/// "2026-05" as "May 2026"; what is not a month stays as it is.
QString month_shown(const std::string& month, const QLocale& locale);
/// A text of the book as it is read: typed m3, t/m3 and -- as they are printed.
QString book_text(const std::string& text);
/// "12 Dec 2025, 24:00": of what is due at midnight the day that ends there, as the consents say it.
QString due_shown(Instant due, const Zone& zone, const QLocale& locale);
/// A state in the reader's language, by the one word that the model has for it.
QString state_word(std::string_view word);
/// By ullage, by draughts, by tally, as stated.
QString method_shown(Method method);

/// The unit of a limit with its basis: "m³ in situ", "trips", "%".
QString limit_unit(const Quantity& quantity);
/// Places shown of a limit's numbers, and what they are multiplied by: shares are shown in %.
int limit_decimals(const Quantity& quantity);
double limit_scale(const Quantity& quantity);
/// "8 · C4": the condition's number, and the member it stands for.
QString limit_name(const LimitState& state);
/// "any 12 months", "month from 1 May 2026"
QString limit_window(const LimitState& state, const Zone& zone, const QLocale& locale);

}  // namespace spoilbook::form
