// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/book.h"

namespace spoilbook {

/// What one entry did to one row, column by column.
struct FieldStep {
    std::string field;  ///< "struck" for a row struck out
    Value before, after;
};

struct RowStep {
    EntryName entry;
    Instant at;
    std::string who, why;
    EntryKind kind = EntryKind::change;
    bool made = false;           ///< the row came with this entry
    bool removed = false;        ///< an undo took the row away
    bool after_signing = false;  ///< written when the row was covered by a signature: shown as added after
    std::vector<FieldStep> fields;
};

/// Every entry that touched the row, oldest first.
std::vector<RowStep> history(const Book& book, const Kind& kind, const Id& id);

}  // namespace spoilbook
