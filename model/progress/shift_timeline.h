// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "model/record/season.h"

namespace spoilbook {

enum class SpanKind { station, load, trip, release, delay, gap };

/// One thing that a shift's timeline shows, cut to the shift.
struct ShiftSpan {
    SpanKind kind = SpanKind::gap;
    std::string label;  ///< of its record; empty for a gap
    std::string words;  ///< the claim, the barge, the cause: what a person calls it
    Period time;
    bool open = false;  ///< it has no end yet: it goes on
};

struct ShiftTimeline {
    Period time;                   ///< opened to ended, or to `as_at` while it runs
    std::vector<ShiftSpan> spans;  ///< by kind, then by time
    double dug_h = 0;              ///< spuds down with a barge being filled, delays taken out
    double delayed_h = 0;          ///< inside delays; overlaps count once
    double unlogged_h = 0;         ///< in gaps
};

/// Time of a shift that neither digging (a station while a load is filled) nor a delay accounts for, and that
/// is longer than this, is a gap: something may have been missed.
inline constexpr std::int64_t least_gap_ms = 10 * ms_per_minute;

/// A shift that has no end is shown for as long as this at most: then it was left open.
inline constexpr std::int64_t longest_open_ms = 24 * ms_per_hour;

/// What is logged of one shift until `as_at`. A station, load or trip that began before the shift is cut at
/// its start. Empty where the shift has no start or starts after `as_at`.
ShiftTimeline shift_timeline(const Season& season, const Shift& shift, Instant as_at);

}  // namespace spoilbook
