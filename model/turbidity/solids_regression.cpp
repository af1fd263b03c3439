// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/solids_regression.h"

#include <fmt/format.h>

#include <algorithm>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>

namespace spoilbook {

namespace {

Refusal no_regression(std::string what, std::string mend) {
    return {"no-regression", "samples", std::move(what), std::move(mend)};
}

}  // namespace

Checked<SolidsRegression> solids_regression(const std::vector<SolidsPair>& pairs) {
    if (pairs.size() < 3)
        return no_regression(fmt::format("{} samples make no regression", pairs.size()),
                             "take three or more; USGS TM 3-C4 asks for many more");
    for (const auto& pair : pairs) {
        if (!(pair.turbidity > 0) || !(pair.solids_mg_l > 0))
            return no_regression("a sample is not over 0: it has no logarithm",
                                 "leave it out, with a reason");
    }
    SolidsRegression found;
    found.n = pairs.size();
    const auto count = static_cast<double>(found.n);
    double mean_s = 0;
    found.least = found.greatest = pairs.front().turbidity;
    for (const auto& pair : pairs) {
        found.mean_log += std::log10(pair.turbidity) / count;
        mean_s += std::log10(pair.solids_mg_l) / count;
        found.least = std::min(found.least, pair.turbidity);
        found.greatest = std::max(found.greatest, pair.turbidity);
    }
    double cross = 0;
    double squares_s = 0;
    for (const auto& pair : pairs) {
        const double t = std::log10(pair.turbidity) - found.mean_log;
        const double s = std::log10(pair.solids_mg_l) - mean_s;
        found.squares_log += t * t;
        squares_s += s * s;
        cross += t * s;
    }
    if (!(found.squares_log > 0))
        return no_regression("all samples have the same turbidity",
                             "add samples of clearer or murkier water");
    found.slope = cross / found.squares_log;
    found.intercept = mean_s - found.slope * found.mean_log;
    double residual_squares = 0;
    double smeared = 0;
    for (const auto& pair : pairs) {
        const double residual =
            std::log10(pair.solids_mg_l) - found.intercept - found.slope * std::log10(pair.turbidity);
        residual_squares += residual * residual;
        smeared += std::pow(10, residual);
    }
    found.standard_error = std::sqrt(residual_squares / (count - 2));
    found.r2 = squares_s > 0 ? 1 - residual_squares / squares_s : 0;
    found.smearing = smeared / count;
    return found;
}

SolidsEstimate solids_at(const SolidsRegression& regression, double turbidity, double probability) {
    const double t = std::log10(turbidity);
    const double log_s = regression.intercept + regression.slope * t;
    const auto count = static_cast<double>(regression.n);
    const double away = t - regression.mean_log;
    const double spread =
        regression.standard_error * std::sqrt(1 + 1 / count + away * away / regression.squares_log);
    const boost::math::students_t law(count - 2);
    const double reach = boost::math::quantile(law, (1 + probability) / 2) * spread;
    SolidsEstimate found;
    found.solids_mg_l = std::pow(10, log_s) * regression.smearing;
    found.low = std::pow(10, log_s - reach) * regression.smearing;
    found.high = std::pow(10, log_s + reach) * regression.smearing;
    found.extrapolated = turbidity < regression.least || turbidity > regression.greatest;
    return found;
}

}  // namespace spoilbook
