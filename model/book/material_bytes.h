// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/book.h"
#include "model/book/packed_file.h"

namespace spoilbook {

// Materials piece by piece: a large file need not lie in memory.

/// Bytes of one material, for as long as the book lives; null where the book has none. That they fit the
/// digest is held against it as often as they are read from the first to the last in order: BookError.
std::unique_ptr<ByteSource> material_bytes(const Book& book, const std::string& digest);
/// Stores bytes as Change::keep does. Refused too: bytes that change while they are read.
Checked<std::string> keep_bytes(Change& change, const ByteSource& bytes);
/// The same of bytes that were packed before, which leaves little to do; answers their digest.
std::string keep_packed(Change& change, const PackedFile& file);

}  // namespace spoilbook
