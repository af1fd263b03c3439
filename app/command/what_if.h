// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command/command.h"
#include "model/progress/works_supposed.h"

namespace spoilbook {

/// The options that suppose something of the works, read into `supposed`, which must outlive the program's.
void add_what_if_options(CLI::App& command, WorksSupposed& supposed);

/// Puts the works as logged, and where something is supposed as they would be, into JSON and lines.
void put_works(Said& said, const WorksForecast& answer, const WorksSupposed& supposed);

}  // namespace spoilbook
