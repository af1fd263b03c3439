// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>

#include "model/record/season.h"

namespace spoilbook {

/// How long from casting off to doors open: the median of the newest 20 trips that log both, ms. Nothing
/// where none does. For an offer alone: no figure is built on it.
std::optional<std::int64_t> tow_time_ms(const Season& season);

}  // namespace spoilbook
