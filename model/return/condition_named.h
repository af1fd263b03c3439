// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "model/record/season.h"

namespace spoilbook {

/// "condition 5"; where another consent has one of that number, "condition 5 of MHB-1".
std::string condition_named(const Condition& condition, const Season& season);

}  // namespace spoilbook
