// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace spoilbook {

/// docs/book-folder.md: every file, column and member of a book folder, from the descriptions of the kinds.
/// The committed file is this text (a test holds it).
std::string book_folder_document();

}  // namespace spoilbook
