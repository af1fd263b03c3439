// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/book.h"
#include "model/record/water_sample.h"
#include "model/turbidity/solids_regression.h"

namespace spoilbook {

struct SolidsPoint {
    WaterSample sample;
    std::string left_out;  ///< why it makes no point of the line; empty: it does
};

/// Suspended solids from turbidity at one site, by its samples (turbidity/samples.csv).
struct SiteSolids {
    std::string site, unit;
    std::vector<SolidsPoint> points;       ///< in order of time
    std::optional<SolidsRegression> line;  ///< nothing: they make none, `why` says why not
    std::string why;

    [[nodiscard]] std::size_t used() const;
};

/// Samples taken by the as-at. A sample that lacks a value, or of which one is not over 0, is left out and
/// said so. Refused where there is no such site.
Checked<SiteSolids> site_solids(const Book& book, const std::string& site, Instant as_at);

}  // namespace spoilbook
