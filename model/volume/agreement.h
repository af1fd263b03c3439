// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "model/volume/method.h"

namespace spoilbook {

/// How well two methods agree about one load.
struct Agreement {
    Method a = Method::stated;
    Method b = Method::stated;
    Measure measure = Measure::in_situ_m3;
    double e_n = 0;

    [[nodiscard]] bool disagree() const { return e_n > 1; }
};

/// E_n = |a − b| / (2 u(a − b)), U = 2u. For independent figures this is ISO 13528's |x₁ − x₂|/√(U₁² + U₂²);
/// what both share (one bulking factor) has no part in their difference and is taken out. Nothing where no
/// uncertainty is left to judge by. Over 1 the two disagree.
std::optional<double> e_n(const Estimate& a, const Estimate& b);

/// Each pair of methods, in situ where both give it, else wet t, else hopper volume.
std::vector<Agreement> agreements(const std::vector<MethodResult>& methods);

}  // namespace spoilbook
