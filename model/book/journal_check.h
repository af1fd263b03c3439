// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/book.h"

namespace spoilbook {

/// The first thing in a book that is not as its journal says.
struct FirstBad {
    std::string table;
    std::string id;     ///< the row's id or the entry's name, or empty for a whole table
    std::string entry;  ///< the newest entry that wrote the row; empty where there is none
    std::string what;
};

/// Holds every table against the journal: the chain of each device, every record table against the replay of
/// its entries, stored files against their digests, and that nothing else lives in the file. Nothing where
/// the book is intact. It shows edits from outside; it does not stop a forger who owns program and file.
std::optional<FirstBad> check_journal(const Book& book);

}  // namespace spoilbook
