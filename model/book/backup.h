// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/book.h"
#include "model/unit/going_on.h"

namespace spoilbook {

/// Copies the book to a new file with SQLite's online backup, also while it is being written, and checks the
/// copy afterwards (its journal and every table). Refused where `to` exists; a copy that is not intact is
/// taken away again and refused. `going_on` may stop it: then there is no copy, and the refusal is "stopped".
Checked<Done> back_up(const Book& book, const std::string& to, const GoingOn& going_on = {});

}  // namespace spoilbook
