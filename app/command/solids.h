// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command/command.h"

namespace spoilbook {

/// One of the turbidity family.
void add_solids_command(CLI::App& program, Options& options, Task& task);

}  // namespace spoilbook
