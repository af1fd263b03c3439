// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <compare>
#include <cstdint>

namespace spoilbook {

/// A point in time: whole milliseconds since 1970-01-01T00:00Z, leap seconds left out as POSIX does.
struct Instant {
    std::int64_t utc_ms = 0;

    auto operator<=>(const Instant&) const = default;
};

constexpr std::int64_t ms_per_second = 1000;
constexpr std::int64_t ms_per_minute = 60 * ms_per_second;
constexpr std::int64_t ms_per_hour = 60 * ms_per_minute;
constexpr std::int64_t ms_per_day = 24 * ms_per_hour;

constexpr Instant operator+(Instant at, std::int64_t ms) {
    return {at.utc_ms + ms};
}
constexpr Instant operator-(Instant at, std::int64_t ms) {
    return {at.utc_ms - ms};
}
/// Milliseconds from b to a.
constexpr std::int64_t operator-(Instant a, Instant b) {
    return a.utc_ms - b.utc_ms;
}

/// A half-open span of time [from, to): months so cut neither overlap nor leave gaps.
struct Period {
    Instant from;
    Instant to;

    [[nodiscard]] constexpr bool contains(Instant at) const { return from <= at && at < to; }
    auto operator<=>(const Period&) const = default;
};

}  // namespace spoilbook
