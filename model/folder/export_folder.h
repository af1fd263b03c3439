// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <string>

#include "model/book/book.h"
#include "model/unit/checked.h"

namespace spoilbook {

struct ExportOutcome {
    std::map<std::string, std::size_t> rows;  ///< by kind, kinds without any left out
    std::size_t files = 0;
    Notes notes;  ///< what could not be written as it stands in the book
};

/// Writes a book out as a folder (docs/book-folder.md): columns in the order of the descriptions, our own
/// only where one is used, references as labels, times with the offset of the book's zone. Reading it into a
/// new book gives the same rows, and writing that one out the same bytes. Struck-out rows are left out,
/// references to them blank and noted. `to` must not exist or be empty; it is whole or not there at all.
Checked<ExportOutcome> export_folder(const Book& book, const std::string& to);

}  // namespace spoilbook
