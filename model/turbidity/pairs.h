// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/turbidity/site_series.h"

namespace spoilbook {

/// Site minus control, reading by reading: a good reading of the site at t is paired with the good reading of
/// the control nearest to t − lag_min (the earlier of two as near), if it is not farther than tolerance_min
/// (none: half the control's interval). Where there is no pair the value is missing. The times and the
/// interval are the site's.
SiteSeries paired_differences(const SiteSeries& site, const SiteSeries& control, double lag_min,
                              std::optional<double> tolerance_min);

}  // namespace spoilbook
