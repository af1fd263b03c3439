// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "model/record/watched_water.h"
#include "model/unit/zone.h"

namespace spoilbook {

/// The midnight that ends the day of a survey: what was dug by then is in it. Nothing without a survey, or
/// where its day is not recorded.
std::optional<Instant> end_of_survey(const Survey* survey, const Zone& zone);

}  // namespace spoilbook
