// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "model/record/season.h"

namespace spoilbook {

/// For each local day, whether a condition of kind time forbids all of it (every half hour): to dredge, or to
/// release, without which dredging stops when the barges are full. What holds by daylight, tide or for some
/// claims, cells or plant alone closes no day.
std::vector<bool> closed_days(const Season& season, const std::vector<Day>& days);

}  // namespace spoilbook
