// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "model/book/journal.h"
#include "model/unit/zone.h"

namespace spoilbook::form {

/// What an entry of the journal did, for undo and the foot: "trip T-0412, written 16:04"; of several records
/// the first, and how many they are.
QString entry_words(const Book& book, const Entry& entry, const Zone& zone);

/// What landed in the book between two states of its journal: whether it was anything but bucket presses.
bool more_than_buckets(const Book& book, const JournalState& before, const JournalState& after);

}  // namespace spoilbook::form
