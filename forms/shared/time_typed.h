// SPDX-License-Identifier: GPL-3.0-or-later
// Reads a time as it is written on a shift sheet.
#pragma once

#include <QString>
#include <optional>

#include "model/unit/instant.h"
#include "model/unit/zone.h"

namespace spoilbook::form {

/// What a typed time is read against. A bare "05:40" is the first such time at or after `after` (the start of
/// the shift), where that is given; otherwise the last one that is not later than `now`.
struct TimeContext {
    Zone zone;
    Instant now;
    std::optional<Instant> after = {};
};

/// An instant, or what is wrong with the text and what would be right. Both empty: the text was blank.
struct TimeReading {
    std::optional<Instant> at = {};
    QString problem = {};
};

/// Accepts 0540, 540, 05:40, 5.40, 5h40; +5 (five minutes ago), "now"; 30 0540 or 30/5 05:40 (day, month);
/// 2026-05-30 05:40, and each with an offset: 02:30+12. A time that clocks skip is refused; one that they
/// show twice is asked for with its offset, and both are named.
TimeReading time_typed(const QString& text, const TimeContext& context);

/// "05:40", the wall time as a sheet shows it.
QString time_shown(Instant at, const Zone& zone);
/// "Sat 30 May 2026, 05:40 UTC+12": which day a bare time was taken for, with the zone.
QString day_and_time_shown(Instant at, const Zone& zone);
/// "UTC+12", "UTC+5:45"
QString offset_shown(int offset_s);

}  // namespace spoilbook::form
