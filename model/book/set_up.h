// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <string>

#include "model/unit/checked.h"

namespace spoilbook {

/// The settings of every connection to a book; a writer's also make each commit durable.
void set_up(SQLite::Database& db, bool writer);
/// Refused where the writing device has no name: its chain would have none.
Checked<Done> check_device(const std::string& device);

}  // namespace spoilbook
