// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "model/progress/shift_hours.h"

namespace spoilbook {

/// Over what hours are added up: everything, local months, ISO weeks, or one shift each.
enum class HoursOver { all, month, week, shift };

/// The hours that one cause took.
struct CauseHours {
    std::string cause;  ///< empty: none is recorded
    double hours = 0;
    std::vector<const Delay*> delays;  ///< those with time in it
};

/// Where the time of some shifts went. digging + all causes + not accounted for = shift hours.
struct HoursRow {
    std::string key;  ///< 2025-11, the Monday of a week (2025-11-03), a shift's number; empty: all
    Instant from;     ///< where it begins: for order
    double shift_h = 0;
    double digging_h = 0;
    double not_accounted_h = 0;
    std::vector<CauseHours> causes;    ///< most hours first
    std::vector<const Shift*> shifts;  ///< those with time in it

    [[nodiscard]] double delay_h() const;
    /// Of the shift hours; 0 where there are none.
    [[nodiscard]] double share(double hours) const { return shift_h > 0 ? hours / shift_h : 0; }
};

/// Rows ascend in time; months and weeks are cut at local midnights, also within a shift. HoursOver::all is
/// one row, empty where no shift was opened.
std::vector<HoursRow> hours_over(const SeasonHours& season, const Zone& zone, HoursOver over);

}  // namespace spoilbook
