// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "model/folder/given.h"

namespace spoilbook {

/// What a book says of itself, for a folder without harbour.json.
struct FolderBasis {
    std::string zone;
    std::optional<int> epsg;
};

/// Reads a book folder (docs/book-folder.md) and checks all that can be checked without a book: every reason
/// to refuse it stands in the answer's complaints, not the first alone. What stands in the folder and is no
/// file of a book folder is left out and noted. Without `basis` harbour.json must stand there. Files are read
/// once; nothing is followed out of the folder.
FolderContents read_folder(const std::string& path, const std::optional<FolderBasis>& basis);

}  // namespace spoilbook
