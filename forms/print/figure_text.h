// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/print/document.h"
#include "model/return/return_facts.h"

namespace spoilbook::print {

/// Numbers as a return prints them: groups of three by a space, a true minus, never in the machine's
/// language.
std::string whole_shown(double value);
/// A standard uncertainty, up to the next whole.
std::string u_shown(double u);
std::string tenths_shown(Tenths value);
/// "November 2025" for 2025-11.
std::string month_shown(const std::string& period_name);
/// "2025-11-03 14:05" on the zone's clock.
std::string clock_shown(const std::optional<Instant>& at, const Zone& zone);

/// The same of a due time: midnight is 24:00 of the day that it ends.
std::string due_clock_shown(const std::optional<Instant>& due, const Zone& zone);

/// Used is rounded up and headroom is limit minus used, as printed.
std::string used_shown(const LimitState& state);
/// Its standard uncertainty, rounded up.
std::string used_u_shown(const LimitState& state);
std::string limit_shown(const LimitState& state);
std::string headroom_shown(const LimitState& state);
/// How it stands, in the words of screens; word and shape say the same. `exceeded`: in the period that is
/// printed; what was exceeded before it is not this period's.
std::string limit_word(const LimitState& state, bool exceeded);
Mark limit_mark(const LimitState& state, bool exceeded);

}  // namespace spoilbook::print
