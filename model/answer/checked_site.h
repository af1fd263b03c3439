// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/book.h"
#include "model/record/watched_water.h"
#include "model/turbidity/site_series.h"

namespace spoilbook {

/// What the book holds of one site, up to the instant (included), checked by the site's thresholds.
SiteSeries checked_site(const Book& book, const Site& site, Instant as_at);

}  // namespace spoilbook
