// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/answer/release_places.h"
#include "model/answer/volumes.h"
#include "model/consent/limit.h"

namespace spoilbook {

/// The same answers for people: used rounds up, headroom rounds down, every figure with its unit and basis.
std::string headroom_text(const std::vector<LimitState>& states, Instant as_at, const Season& season);
std::string volumes_text(const std::vector<VolumeRow>& rows, const std::vector<GroupBy>& by);
std::string load_text(const Load& load, const LoadFigures& figures, const Notes& notes, const Season& season);
std::string releases_text(const std::vector<ReleasePlace>& places, const Season& season);

}  // namespace spoilbook
