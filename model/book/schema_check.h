// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/book.h"

namespace spoilbook {

/// The first table, index, view or trigger that a book of this version does not have, lacks, or has otherwise
/// made, in words; nothing where all stand as they should.
std::optional<std::string> odd_table(const Book& book);

}  // namespace spoilbook
