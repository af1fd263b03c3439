// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "model/unit/checked.h"

namespace spoilbook {

/// One water sample with the turbidity at its time.
struct SolidsPair {
    double turbidity = 0;    ///< NTU or FNU as the sensor reports, over 0
    double solids_mg_l = 0;  ///< suspended solids, over 0
};

/// Suspended solids from turbidity at one site: log10 S = intercept + slope · log10 T by least squares.
/// Source: USGS Techniques and Methods 3-C4 (2009); the smearing factor: Duan, JASA 78 (1983) 605–610.
struct SolidsRegression {
    std::size_t n = 0;
    double intercept = 0, slope = 0;
    double standard_error = 0;  ///< root of the residual mean square over n − 2, in log10 units
    double r2 = 0;
    double smearing = 1;  ///< mean of 10^residual: what the mean loses when logs are taken back
    double mean_log = 0, squares_log = 0;  ///< of log10 T: mean, sum of squares about it
    double least = 0, greatest = 0;        ///< turbidity of the samples: outside, it is extrapolated
};

/// Refused: fewer than three pairs, a value not over 0, turbidities that are all the same.
Checked<SolidsRegression> solids_regression(const std::vector<SolidsPair>& pairs);

/// Suspended solids at a turbidity over 0, mg/L, with the interval in which one new sample lies with the
/// probability asked for; interval and value both carry the smearing factor.
struct SolidsEstimate {
    double solids_mg_l = 0;
    double low = 0, high = 0;
    bool extrapolated = false;
};
SolidsEstimate solids_at(const SolidsRegression& regression, double turbidity, double probability = 0.9);

}  // namespace spoilbook
