// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command/command.h"

namespace spoilbook {

/// over-dredge: what was dug below target level, and what it cost.
void add_over_dredge_command(CLI::App& program, Options& options, Task& task);

}  // namespace spoilbook
