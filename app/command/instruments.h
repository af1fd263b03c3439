// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command/command.h"

namespace spoilbook {

/// Of the turbidity family.
void add_instrument_commands(CLI::App& program, Options& options, Task& task);

}  // namespace spoilbook
