// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "model/record/season.h"

namespace spoilbook {

/// The season with only those factors that the authority had accepted by the as-at: figures as reported, not
/// as restated. A row of factors.csv that revises nothing (the first of its factor, where materials.csv has
/// none) needs no acceptance. Nothing where every revision that began by then was accepted by then: both
/// readings are one.
std::optional<Season> season_as_reported(const Season& season, Instant as_at);

}  // namespace spoilbook
