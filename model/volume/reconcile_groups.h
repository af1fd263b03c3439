// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

#include "model/volume/reconcile_period.h"

namespace spoilbook {

/// Which claim-periods hang together: by a material or by a source of shared uncertainty. Each inner list
/// ascends; claim-periods without any hopper volume are in none.
std::vector<std::vector<std::size_t>> linked_periods(std::span<const ClaimPeriod> periods);

}  // namespace spoilbook
