# SPDX-License-Identifier: GPL-3.0-or-later
"""UTM zone 60 south on WGS 84 (EPSG:32760) to latitude and longitude: Krueger's series to the fourth order.

Source: Karney, Transverse Mercator with an accuracy of a few nanometers, J. Geodesy 85 (2011), eqs 11 and 36.
"""
import math

A, F, K0, LON0 = 6378137.0, 1 / 298.257223563, 0.9996, 177.0
N = F / (2 - F)
E2 = F * (2 - F)
RADIUS = K0 * A / (1 + N) * (1 + N**2 / 4 + N**4 / 64)
BETA = (
    N / 2 - 2 * N**2 / 3 + 37 * N**3 / 96 - N**4 / 360,
    N**2 / 48 + N**3 / 15 - 437 * N**4 / 1440,
    17 * N**3 / 480 - 37 * N**4 / 840,
    4397 * N**4 / 161280,
)


def lat_lon(easting, northing):
    """Degrees; good to well under a millimetre within the zone."""
    xi, eta = (northing - 10000000.0) / RADIUS, (easting - 500000.0) / RADIUS
    x, y = xi, eta
    for j, beta in enumerate(BETA, 1):
        x -= beta * math.sin(2 * j * xi) * math.cosh(2 * j * eta)
        y -= beta * math.cos(2 * j * xi) * math.sinh(2 * j * eta)
    conformal = math.sin(x) / math.hypot(math.sinh(y), math.cos(x))
    tau, e = conformal, math.sqrt(E2)
    for _ in range(3):
        hyp = math.hypot(1, tau)
        sigma = math.sinh(e * math.atanh(e * tau / hyp))
        found = tau * math.hypot(1, sigma) - sigma * hyp
        slope = (1 + (1 - E2) * tau * tau) / ((1 - E2) * math.hypot(1, found) * hyp)
        tau += (conformal - found) * slope
    return math.degrees(math.atan(tau)), LON0 + math.degrees(math.atan2(math.sinh(y), math.cos(x)))
