// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command/command.h"

namespace spoilbook {

/// Delays and productivity.
void add_pace_commands(CLI::App& program, Options& options, Task& task);

}  // namespace spoilbook
