// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "model/turbidity/site_series.h"

namespace spoilbook {

/// Readings [first, last) with what the checks said of each, as bytes of this machine: for a store that is
/// made anew where it does not fit. Flags are the checks' own; what people set is not in it.
std::string day_rows(const SiteSeries& series, std::size_t first, std::size_t last);
/// Appends what day_rows wrote.
void append_day_rows(SiteSeries& series, const std::string& rows);

}  // namespace spoilbook
