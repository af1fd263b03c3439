// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/book.h"
#include "model/record/watched_water.h"
#include "model/turbidity/site_series.h"

namespace spoilbook {

/// What the book holds of one site, up to the instant (included), checked by the site's thresholds.
SiteSeries checked_site(const Book& book, const Site& site, Instant as_at);

/// The thresholds of the site's checks: its own, and over them those that hold for a time, whole.
std::vector<ThresholdSpan> thresholds_of(const Book& book, const Site& site);
/// The overrules of a site that say from when and to which flag, in the order of the book.
std::vector<Overrule> overrule_rows_of(const Book& book, const Site& site);
/// The flags that people set on the site's readings, in the order in which they were set.
std::vector<FlagOverrule> overrules_of(const Book& book, const Site& site);

}  // namespace spoilbook
