// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>

#include "model/book/inside.h"
#include "model/unit/checked.h"

namespace spoilbook {

/// Whether an earlier version of the program made the tables.
bool is_older(SQLite::Database& db);

/// Brings the tables of a book that is open to write to this version, after a checked backup beside it
/// (`BOOK.sbook-tables-N`, N the old version; one that an interrupted upgrade left is kept). All of it in one
/// transaction, or nothing; nothing where they are of this version. Refused where the backup cannot be made
/// or the book is not intact. Throws SQLite::Exception where the disk fails.
Checked<Done> upgrade(Book& book);

/// A reader does not write: it reads an older book from a copy in memory, upgraded there. The file itself
/// where its tables are not those of the version that it names: the check will say so.
std::unique_ptr<SQLite::Database> upgraded_copy(std::unique_ptr<SQLite::Database> db);

}  // namespace spoilbook
