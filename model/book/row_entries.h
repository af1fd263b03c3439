// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/book.h"

namespace spoilbook {

/// Which entries wrote a row: the table entry_row, derived from the journal, so that asking for one row's
/// entries costs the same in a large book as in a small one.

/// An entry without what it holds.
struct EntryPlace {
    EntryName name;
    Instant at;
    std::int64_t stamp_ms = 0, stamp_count = 0;
    EntryKind kind = EntryKind::change;
};

/// In replay order.
std::vector<EntryPlace> entries_of(const Book& book, const Id& row);

/// Notes the rows of an entry within the transaction that is open. For append_entry only.
void index_rows(const Book& book, const Entry& entry);

/// (row, device, seq) as the journal tells them, or as the table holds them; sorted.
using EntryRow = std::pair<Id, EntryName>;
std::vector<EntryRow> entry_rows_told(const Book& book);
std::vector<EntryRow> entry_rows_held(const Book& book);

}  // namespace spoilbook
