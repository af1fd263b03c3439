// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "model/record/season.h"

namespace spoilbook {

/// For each of some local days, whether a condition of kind time forbids all of it (every half hour): to
/// dredge, or to release, without which dredging stops when the barges are full.
struct ClosedDays {
    std::vector<bool> season;  ///< whatever the weekday: the season is closed
    std::vector<bool> rest;    ///< for its weekday, such as every Sunday: the season goes on

    [[nodiscard]] bool at(std::size_t day) const { return season[day] || rest[day]; }
};

/// What holds by daylight, tide or for some claims, cells or plant alone closes no day.
ClosedDays closed_days(const Season& season, const std::vector<Day>& days);

/// Moves the day on which the season next opens, and the one on which it next closes; blank: as it is.
/// `days` follow each other; the first is the one before those to come, and stays. A season that opens
/// before it closes, or closes after it would open again, is not closed in between. Where `closed` knows no
/// such day: it is closed until it opens, and from where it closes until it opens again or to the end.
void move_season(std::vector<bool>& closed, const std::vector<Day>& days, const std::optional<Day>& opens,
                 const std::optional<Day>& closes);

}  // namespace spoilbook
