// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/agreement.h"

#include <cmath>

namespace spoilbook {

std::optional<double> e_n(const Estimate& a, const Estimate& b) {
    const Estimate difference = a + b * -1;
    const double u = difference.u();
    // What cancels leaves rounding behind; less than this is no uncertainty.
    if (!(u > 1e-9 * (a.u() + b.u()))) return std::nullopt;
    return std::fabs(difference.value) / (2 * u);
}

namespace {

/// By the first measure that both give.
std::optional<Agreement> agreement(const MethodResult& one, const MethodResult& other) {
    for (const Measure measure : {Measure::in_situ_m3, Measure::wet_t, Measure::hopper_m3}) {
        const auto& a = one.of(measure);
        const auto& b = other.of(measure);
        if (!a || !b) continue;
        const auto number = e_n(*a, *b);
        return number ? std::optional(Agreement{one.method, other.method, measure, *number}) : std::nullopt;
    }
    return std::nullopt;
}

}  // namespace

std::vector<Agreement> agreements(const std::vector<MethodResult>& methods) {
    std::vector<Agreement> found;
    for (std::size_t i = 0; i < methods.size(); ++i) {
        for (std::size_t j = i + 1; j < methods.size(); ++j) {
            if (const auto pair = agreement(methods[i], methods[j])) found.push_back(*pair);
        }
    }
    return found;
}

}  // namespace spoilbook
