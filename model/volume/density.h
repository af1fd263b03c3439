// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

namespace spoilbook {

/// Density of sea water at atmospheric pressure, t/m³, from practical salinity S (PSS-78) 0 to 42 and
/// temperature t68 (°C, IPTS-68) -2 to 40. Nothing outside these ranges. A thermometer of today reads ITS-90:
/// t68 = 1.00024 · t90 (makes 0.002 kg/m³ at most). Standard error of the equation 0.0036 kg/m³.
/// Source: Fofonoff and Millard, UNESCO Technical Papers in Marine Science 44 (1983), section 3 (EOS-80).
std::optional<double> seawater_density_t_m3(double salinity, double t68_c);

}  // namespace spoilbook
