// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <set>

#include "model/book/book.h"
#include "model/book/journal.h"

namespace spoilbook {

/// A copy in memory of the record tables as the journal tells them, from the entries that `take` accepts, in
/// replay order; merged and applied once, which is some hundred times faster than one by one. The journal
/// itself is not copied; stored files are not. Throws BookError where an entry's hash is wrong or the entries
/// do not apply.
Book replayed(const Book& book, const std::function<bool(const Entry&)>& take);

/// The point up to which the journal is taken: an entry ("device:seq", or "seq" where the book has one
/// device), and all before it in replay order; or a time: every entry whose stamp is not later.
struct KnownAt {
    std::optional<EntryName> entry;
    std::optional<Instant> time;
};

/// Reads what a person gave. Refused where it is neither a time nor an entry that the book has.
Checked<KnownAt> parse_known_at(const Book& book, const std::string& text);

/// What the book knew then; stored files are read from the book's own file.
Book known_at(const Book& book, const KnownAt& point);
/// The journal as it was then.
JournalState journal_state_at(const Book& book, const KnownAt& point);
/// The entries that there were then.
std::set<EntryName> entries_at(const Book& book, const KnownAt& point);

}  // namespace spoilbook
