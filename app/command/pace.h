// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command/command.h"
#include "model/progress/pace.h"

namespace spoilbook {

/// Delays and productivity.
void add_pace_commands(CLI::App& program, Options& options, Task& task);

/// {loads, fill_min, change_min, round_trip_min, tugs, barges, loads_per_h_…, governs}: what `sbk
/// productivity` and `sbk burndown` say of the pace.
nlohmann::ordered_json pace_json(const Pace& pace);
/// {n, p10, median, p90}, or null.
nlohmann::ordered_json spread_json(const std::optional<Spread>& spread);

}  // namespace spoilbook
