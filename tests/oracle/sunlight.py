# SPDX-License-Identifier: GPL-3.0-or-later
"""Is it day at a place? The sun's height by the low-precision series of the Astronomical Almanac (page C5),
good to 0.01 degrees from 1950 to 2050: another algorithm than the project's. MEM; held to by sunrise tables."""
from math import asin, atan2, cos, degrees, radians, sin

J2000 = 946728000000    # ms UTC of 2000-01-01 12:00
HORIZON = -50 / 60      # the upper edge on a sea horizon: 34' of refraction, 16' of half the sun's width


def height(t, lat, lon):
    """Degrees of the sun's centre above the horizon, without refraction."""
    n = (t - J2000) / 86400000
    mean = radians((280.460 + 0.9856474 * n) % 360)
    anomaly = radians((357.528 + 0.9856003 * n) % 360)
    longitude = mean + radians(1.915 * sin(anomaly) + 0.020 * sin(2 * anomaly))
    tilt = radians(23.439 - 0.0000004 * n)
    ascension = atan2(cos(tilt) * sin(longitude), cos(longitude))
    declination = asin(sin(tilt) * sin(longitude))
    sidereal = radians((280.46061837 + 360.98564736629 * n) % 360)
    hour = sidereal + radians(lon) - ascension
    up = sin(radians(lat)) * sin(declination) + cos(radians(lat)) * cos(declination) * cos(hour)
    return degrees(asin(up))


def is_day(t, lat, lon):
    return height(t, lat, lon) > HORIZON


def near_edge(t, lat, lon, margin=120000):
    """Whether sunrise or sunset lies within `margin` ms."""
    return len({is_day(t + d, lat, lon) for d in (-margin, -margin // 2, 0, margin // 2, margin)}) > 1
