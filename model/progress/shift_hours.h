// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <unordered_map>

#include "model/progress/periods.h"
#include "model/record/season.h"

namespace spoilbook {

/// The time of a shift that one delay has for itself.
struct DelaySpan {
    const Delay* delay = nullptr;
    Period time;
};

/// Where a shift's time went: digging, delays and what neither accounts for add up to its length.
struct ShiftHours {
    const Shift* shift = nullptr;
    Period time;                    ///< opened to ended, or to the as-at
    Periods digging;                ///< spuds down with a barge being filled, delays taken out
    std::vector<DelaySpan> delays;  ///< in order; no instant twice
    Periods not_accounted;          ///< neither: however short

    [[nodiscard]] double shift_h() const { return hours({time}); }
    [[nodiscard]] double digging_h() const { return hours(digging); }
    [[nodiscard]] double delay_h() const;
    [[nodiscard]] double not_accounted_h() const { return hours(not_accounted); }
};

/// Points into the season, which must outlive it.
struct SeasonHours {
    std::vector<ShiftHours> shifts;           ///< by their opening
    std::size_t delays_left_out = 0;          ///< without a start, or without a shift that had been opened
    std::unordered_map<Id, Periods> loading;  ///< of each load, cut at the as-at
};

/// Every shift opened by `as_at`. Of delays that overlap the one that began first has the common time (of two
/// that began together, the first in the book). A row without an end goes on until the as-at, for 24 hours at
/// most; a delay, to the end of its shift. Digging is as in shift_timeline. Common practice, no source.
SeasonHours season_hours(const Season& season, Instant as_at);

/// When the bed was dug by `as_at`: the digging of every shift, joined. Of a season without shifts, when its
/// loads were filled.
Periods digging_periods(const Season& season, Instant as_at);

}  // namespace spoilbook
