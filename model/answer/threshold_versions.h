// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "model/book/book.h"
#include "model/turbidity/checks.h"

namespace spoilbook {

/// One version of the thresholds of a site's checks.
struct ThresholdVersion {
    std::string site, unit;
    std::string check;  ///< label of the site check; empty: the site's own, which hold where no check does
    ThresholdSpan span;
    bool in_force = false;  ///< for a reading at the as-at
};

/// Every version of every site, in the order of the sites; of one site in the order in which they stand in
/// the book: of those that overlap the last holds, whole.
std::vector<ThresholdVersion> threshold_versions(const Book& book, Instant as_at);

}  // namespace spoilbook
