// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/answer/volumes.h"
#include "model/consent/limit.h"
#include "model/progress/burndown.h"

namespace spoilbook {

/// How a limit stands, worst last but for cannot_tell. `warned`: a warn_at of the condition is reached.
/// `was_over`: it is not now, but has been (first_over). `below`: an at_least that is not reached yet.
enum class LimitStanding { no_limit, within, warned, was_over, below, over, cannot_tell };

/// `over` where used is more than the limit, whatever its uncertainty; `cannot_tell` where loads are unknown
/// and what is known does not exceed it already.
LimitStanding standing_of(const LimitState& state);
/// The word of a standing (docs/words.md), which screens, lines and printed pages have for it.
std::string_view standing_word(LimitStanding standing);
/// The highest warn_at of the condition that is reached; nothing where none is.
std::optional<double> warned_at(const LimitState& state);
/// The word; of one that is warned also at what share: "warned at 95 %".
std::string standing_text(const LimitState& state);

/// The limit of which the largest share is used; null where none has a limit to share out. An at_least is
/// none: there is nothing to use up.
const LimitState* least_headroom(const std::vector<LimitState>& states);

/// The limit on all in-situ volume released in a calendar month; nothing where the consent has none.
std::optional<double> monthly_limit(const std::vector<LimitState>& states);

/// What is left on the last day that anything is known of, in-situ m³.
struct PlanStanding {
    Day date;
    double left_m3 = 0;
    std::optional<double> plan_m3;   ///< planned to be left at the end of that day
    std::optional<double> ahead_m3;  ///< negative: behind the plan
};

/// Nothing before the first planned or dredged day.
std::optional<PlanStanding> plan_standing(const BurnDown& burn);

/// Every month from that of the first release (or of the earliest commencement of a consent) to that of the
/// as-at, as YYYY-MM, newest first.
std::vector<std::string> months_until(const Ledger& ledger, Instant as_at);

/// Rows of volumes() by month alone, with a nil row for each month in between that has none: nothing was
/// released in it, which is known exactly.
std::vector<VolumeRow> with_nil_months(const std::vector<VolumeRow>& rows);

}  // namespace spoilbook
