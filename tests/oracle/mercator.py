# SPDX-License-Identifier: GPL-3.0-or-later
"""WGS 84 latitude and longitude to UTM metres and back: transverse Mercator by the Krueger series to n^6.

Source: Krueger (1912) as restated by Karney, Transverse Mercator with an accuracy of a few nanometers,
J. Geodesy 85 (2011), eqs 7 to 12 and 35 (the n^6 coefficients).
"""
import math

A_WGS84 = 6378137.0
F_WGS84 = 1 / 298.257223563


class Mercator:
    """One transverse Mercator projection; lat, lon in degrees, easting and northing in metres."""

    def __init__(self, lon0, false_northing, a=A_WGS84, f=F_WGS84, k0=0.9996, lat0=0.0,
                 false_easting=500000.0):
        n = f / (2 - f)
        self.e = math.sqrt(f * (2 - f))
        self.lon0, self.k0 = lon0, k0
        self.radius = a / (1 + n) * (1 + n**2 / 4 + n**4 / 64 + n**6 / 256)
        self.alpha = [
            n / 2 - 2 * n**2 / 3 + 5 * n**3 / 16 + 41 * n**4 / 180 - 127 * n**5 / 288 + 7891 * n**6 / 37800,
            13 * n**2 / 48 - 3 * n**3 / 5 + 557 * n**4 / 1440 + 281 * n**5 / 630 - 1983433 * n**6 / 1935360,
            61 * n**3 / 240 - 103 * n**4 / 140 + 15061 * n**5 / 26880 + 167603 * n**6 / 181440,
            49561 * n**4 / 161280 - 179 * n**5 / 168 + 6601661 * n**6 / 7257600,
            34729 * n**5 / 80640 - 3418889 * n**6 / 1995840,
            212378941 * n**6 / 319334400,
        ]
        self.fe, self.fn = false_easting, 0.0
        self.fn = false_northing - self.forward(lat0, lon0)[1]

    def forward(self, lat, lon):
        phi, lam = math.radians(lat), math.radians(lon - self.lon0)
        tau = math.tan(phi)
        sigma = math.sinh(self.e * math.atanh(self.e * tau / math.hypot(1, tau)))
        tau1 = tau * math.hypot(1, sigma) - sigma * math.hypot(1, tau)
        xi1 = math.atan2(tau1, math.cos(lam))
        eta1 = math.asinh(math.sin(lam) / math.hypot(tau1, math.cos(lam)))
        xi, eta = xi1, eta1
        for j, alpha in enumerate(self.alpha, 1):
            xi += alpha * math.sin(2 * j * xi1) * math.cosh(2 * j * eta1)
            eta += alpha * math.cos(2 * j * xi1) * math.sinh(2 * j * eta1)
        scale = self.k0 * self.radius
        return self.fe + scale * eta, self.fn + scale * xi

    def inverse(self, easting, northing):
        """Newton steps on forward() with a numeric slope: slow and plain, good to 1e-12 degrees."""
        lat, lon = math.degrees((northing - self.fn) / (self.k0 * self.radius)), self.lon0
        for _ in range(20):
            e, n = self.forward(lat, lon)
            step = 1e-6
            e1, n1 = self.forward(lat + step, lon)
            e2, n2 = self.forward(lat, lon + step)
            a, b, c, d = (e1 - e) / step, (e2 - e) / step, (n1 - n) / step, (n2 - n) / step
            det = a * d - b * c
            de, dn = easting - e, northing - n
            lat += (de * d - b * dn) / det
            lon += (a * dn - c * de) / det
            if abs(de) + abs(dn) < 1e-9:
                break
        return lat, lon


def utm(epsg):
    """The projection of EPSG:326xx (north) or EPSG:327xx (south)."""
    side, number = divmod(int(epsg), 100)
    if side not in (326, 327) or not 1 <= number <= 60:
        raise ValueError(f"the oracle knows UTM on WGS 84 only, not EPSG:{epsg}")
    return Mercator(number * 6 - 183, 10000000.0 if side == 327 else 0.0)
