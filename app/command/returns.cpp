// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command/command.h"

namespace spoilbook {

void add_return_commands(CLI::App&, Options&, Task&) {}

}  // namespace spoilbook
