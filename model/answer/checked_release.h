// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/book.h"
#include "model/consent/release_check.h"

namespace spoilbook {

/// What a check of releases at `at` needs beside the season: the watches on record, and of loggers and
/// surveys how water and bed stood at `at` or, where that is still to come, at `as_at`. Loggers and grids are
/// read only where a condition in force at `at` stops releases by them.
CheckFacts check_facts(const Book& book, const Season& season, Instant at, Instant as_at);

/// Whether any condition asks for what only the book has; else an empty list of each says it all.
bool asks_the_book(const Season& season);
/// The facts of a season for which that is not so.
CheckFacts no_facts();

/// The release check of a book: what the command asks. `done` is the book's and must outlive the answer.
Checked<ReleaseCheck> checked_release(const Book& book, const Ledger& done, const PlannedRelease& planned,
                                      Instant as_at);

}  // namespace spoilbook
