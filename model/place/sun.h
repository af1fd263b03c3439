// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "model/place/point.h"
#include "model/unit/instant.h"

namespace spoilbook {

/// The sun's apparent place, of the date. Degrees.
struct SunPlace {
    double right_ascension_deg = 0;  ///< 0 to 360
    double declination_deg = 0;
};

/// Good to 0.01 degree from 1950 to 2100 (UTC is taken for dynamical time, a minute off today). Source:
/// J. Meeus, Astronomical Algorithms, 2nd edition (1998), chapter 25, low accuracy, apparent.
SunPlace sun_place(Instant at);

/// Of the sun's centre above the true horizon at sea level, without refraction, degrees. Sidereal time:
/// Meeus, chapter 12.
double sun_altitude_deg(Instant at, LonLat site);

/// The sun's centre at rising and setting: 34' of refraction and 16' of half its width below the horizon,
/// as almanacs take it.
inline constexpr double rising_altitude_deg = -50.0 / 60.0;

/// By day: the upper edge of the sun above a sea horizon.
bool is_daylight(Instant at, LonLat site);

/// Every sunrise and sunset in the span: the first millisecond of day, or of night. Good to some seconds
/// by the sun's place, a minute or two near the poles and by real refraction. A day or night of under five
/// minutes may be passed over. None where it stays day or night.
std::vector<Instant> sun_turns(Period span, LonLat site);

}  // namespace spoilbook
