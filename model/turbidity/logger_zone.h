// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "model/turbidity/logger_time.h"

namespace spoilbook {

/// Seconds east of Greenwich of UTC, GMT, Z, +12:00, UTC+12, GMT-05:30; nothing for anything else.
std::optional<int> fixed_offset_s(std::string_view text);

/// The clock that a logger kept: a fixed offset, or a zone with its changes.
class LoggerZone {
 public:
    /// Blank, or a name that is not known: only times with an offset of their own can be read.
    explicit LoggerZone(const std::string& name);

    [[nodiscard]] bool known() const { return offset_s_ || zone_; }
    /// Nothing, and the reason in `why`, for a time of a zone that happens twice or never.
    std::optional<Instant> instant(Day day, const LoggerTime& time, std::string& why) const;

 private:
    std::optional<int> offset_s_;
    std::optional<Zone> zone_;
};

}  // namespace spoilbook
