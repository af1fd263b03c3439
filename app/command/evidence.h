// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command/command.h"

namespace spoilbook {

/// Duties marked as done, and the files that show it.
void add_evidence_commands(CLI::App& program, Options& options, Task& task);

}  // namespace spoilbook
