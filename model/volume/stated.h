// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "model/volume/readings.h"

namespace spoilbook {

/// How much as it was stated: hopper m³, in-situ m³ or both, taken as exact; the one that is missing by
/// bulking. Nothing where neither is stated.
std::optional<MethodResult> by_statement(const LoadReadings& readings);

}  // namespace spoilbook
