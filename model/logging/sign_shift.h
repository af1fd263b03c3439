// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/logging/log_record.h"

namespace spoilbook {

/// Signs a shift sheet by name (act.who) at act.at: from then on what it covers changes only by a correction.
/// Refused: no such shift, signed already, not ended, no name, a name that is not in people.csv (where the
/// book has people), a signature before the shift's end.
Checked<EntryName> sign_shift(Book& book, const Act& act, const std::string& label);

}  // namespace spoilbook
