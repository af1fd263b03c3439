// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/sun.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace spoilbook {

namespace {

constexpr double degree = std::numbers::pi / 180;
constexpr std::int64_t j2000_utc_ms = 946'728'000'000;  // 2000-01-01T12:00Z
constexpr std::int64_t step_ms = 5 * ms_per_minute;

double days_since_j2000(Instant at) {
    return static_cast<double>(at.utc_ms - j2000_utc_ms) / static_cast<double>(ms_per_day);
}

double turned(double deg) {
    return deg - 360 * std::floor(deg / 360);
}

}  // namespace

SunPlace sun_place(Instant at) {
    const double t = days_since_j2000(at) / 36525;  // Julian centuries
    const double mean_longitude = 280.46646 + t * (36000.76983 + t * 0.0003032);
    const double anomaly = (357.52911 + t * (35999.05029 - t * 0.0001537)) * degree;
    const double centre = (1.914602 - t * (0.004817 + t * 0.000014)) * std::sin(anomaly) +
                          (0.019993 - t * 0.000101) * std::sin(2 * anomaly) +
                          0.000289 * std::sin(3 * anomaly);
    const double node = (125.04 - 1934.136 * t) * degree;
    const double longitude = (mean_longitude + centre - 0.00569 - 0.00478 * std::sin(node)) * degree;
    const double mean_obliquity = 23.4392911 - t * (0.0130042 + t * (1.64e-7 - t * 5.04e-7));
    const double obliquity = (mean_obliquity + 0.00256 * std::cos(node)) * degree;
    const double right = std::atan2(std::cos(obliquity) * std::sin(longitude), std::cos(longitude));
    return {turned(right / degree), std::asin(std::sin(obliquity) * std::sin(longitude)) / degree};
}

double sun_altitude_deg(Instant at, LonLat site) {
    const double days = days_since_j2000(at), t = days / 36525;
    const double sidereal_deg = 280.46061837 + turned(360.98564736629 * days) + 0.000387933 * t * t;
    const SunPlace sun = sun_place(at);
    const double hour_angle = (sidereal_deg + site.lon_deg - sun.right_ascension_deg) * degree;
    const double lat = site.lat_deg * degree, declination = sun.declination_deg * degree;
    const double sine =
        std::sin(lat) * std::sin(declination) + std::cos(lat) * std::cos(declination) * std::cos(hour_angle);
    return std::asin(std::clamp(sine, -1.0, 1.0)) / degree;
}

bool is_daylight(Instant at, LonLat site) {
    return sun_altitude_deg(at, site) >= rising_altitude_deg;
}

std::vector<Instant> sun_turns(Period span, LonLat site) {
    std::vector<Instant> turns;
    bool by_day = is_daylight(span.from - 1, site);
    for (Instant before = span.from - 1; before + 1 < span.to;) {
        const Instant after = std::min(before + step_ms, span.to - 1);
        const bool then = is_daylight(after, site);
        if (then != by_day) {
            Instant old = before, turned_by = after;
            while (turned_by - old > 1) {
                const Instant middle = old + (turned_by - old) / 2;
                (is_daylight(middle, site) == by_day ? old : turned_by) = middle;
            }
            turns.push_back(turned_by);
        }
        by_day = then;
        before = after;
    }
    return turns;
}

}  // namespace spoilbook
