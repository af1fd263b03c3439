// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "model/unit/checked.h"
#include "model/unit/instant.h"

namespace spoilbook {

/// A day of the proleptic Gregorian calendar, years 1 to 9999.
struct Day {
    int year = 1970;
    int month = 1;
    int day = 1;

    auto operator<=>(const Day&) const = default;
};

/// What a wall clock shows. `offset_s` is seconds east of Greenwich.
struct WallTime {
    Day day;
    int hour = 0;
    int minute = 0;
    int second = 0;
    int millisecond = 0;
    int offset_s = 0;

    bool operator==(const WallTime&) const = default;
};

/// How often a wall time occurs in a zone: never (clocks went forward over it), once, or twice.
enum class Occurs { never, once, twice };

/// An IANA time zone. Cheap to copy. Valid beyond 2037: the closing rule of the zone file is followed
/// (abseil does; checked against python's zoneinfo to 2060).
class Zone {
 public:
    /// Refuses a name that the system's zone database does not hold, and file paths.
    static Checked<Zone> named(const std::string& name);
    static Zone utc();

    [[nodiscard]] const std::string& name() const;
    [[nodiscard]] WallTime wall(Instant at) const;
    /// The instant of a wall time; offset_s is ignored. A wall time that does not exist takes the offset
    /// before the gap, one that happens twice the earlier (consent-rules.md).
    [[nodiscard]] Instant instant(const WallTime& wall) const;
    [[nodiscard]] Occurs occurs(const WallTime& wall) const;
    /// The same where the wall time happens twice: the later. (Where it does not exist: with the offset after
    /// the gap.)
    [[nodiscard]] Instant later_instant(const WallTime& wall) const;
    /// The first instant after `at` at which the clocks are changed; nothing where they never are again.
    [[nodiscard]] std::optional<Instant> next_change(Instant at) const;
    /// The first instant of a local day (its midnight, or what stands for it where clocks skip midnight).
    [[nodiscard]] Instant day_start(Day day) const;
    [[nodiscard]] Day day_of(Instant at) const { return wall(at).day; }

 private:
    struct Impl;
    explicit Zone(std::shared_ptr<const Impl> impl) : impl_(std::move(impl)) {}
    std::shared_ptr<const Impl> impl_;
};

}  // namespace spoilbook
