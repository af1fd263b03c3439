// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/book.h"

namespace spoilbook {

/// Takes back, as a new entry, the newest change by act.who on this device that is not taken back yet, no
/// further than the opening of the newest shift. Refused whole where the inverse does not apply (naming the
/// entry that stands on it) or where it touches what was signed since. `act.kind` is ignored.
Checked<EntryName> undo(Book& book, const Act& act);
/// Restores what the newest undo by act.who took back, unless they changed something since.
Checked<EntryName> redo(Book& book, const Act& act);

/// What undo would take back and redo restore: for the menu. Nothing where there is nothing.
std::optional<Entry> next_undo(const Book& book, const std::string& who);
std::optional<Entry> next_redo(const Book& book, const std::string& who);

}  // namespace spoilbook
