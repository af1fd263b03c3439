// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/book.h"

namespace spoilbook {

/// A table, index, view or trigger that is not as this version of a book has it.
struct OddTable {
    std::string name, what;
};

/// The first that a book of this version does not have, lacks, or has otherwise made; nothing where all stand
/// as they should.
std::optional<OddTable> odd_table(const Book& book);

}  // namespace spoilbook
